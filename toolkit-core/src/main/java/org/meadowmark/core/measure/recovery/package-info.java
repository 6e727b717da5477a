/**
 * What is lost until a scar has closed, and what a repair gives back: discounted service over the
 * years, and regrowth from the edges. Knows nothing of the rest of measuring.
 */
package org.meadowmark.core.measure.recovery;
