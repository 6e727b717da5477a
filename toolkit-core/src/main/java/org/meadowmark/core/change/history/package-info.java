/** What became of each scar over any number of surveys. */
package org.meadowmark.core.change.history;
