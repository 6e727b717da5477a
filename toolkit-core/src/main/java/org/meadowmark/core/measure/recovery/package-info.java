/**
 * What is lost until a scar has closed, and what a repair gives back: discounted service over the
 * years, and regrowth from the edges. Takes what was measured; measuring knows nothing of it.
 */
package org.meadowmark.core.measure.recovery;
