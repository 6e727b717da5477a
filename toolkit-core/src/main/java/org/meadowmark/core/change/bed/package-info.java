/**
 * Grass gained and lost between the bed layers of two surveys, apart from scars, and how much of
 * the loss scars explain.
 */
package org.meadowmark.core.change.bed;
