/**
 * Third stage: looks up reference systems, chooses the analysis grid, and projects the checked
 * layers to it.
 */
package org.meadowmark.core.project;
