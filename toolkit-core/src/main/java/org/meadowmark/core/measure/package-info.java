/**
 * Fourth stage: damage, fragmentation and gaps of a survey on a metric grid.
 *
 * <p>Areas and lengths in results are ground values unless a name says otherwise.
 */
package org.meadowmark.core.measure;
