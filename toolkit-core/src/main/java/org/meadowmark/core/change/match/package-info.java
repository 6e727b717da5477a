/**
 * Which scar of one survey is which of the next.
 *
 * <p>A scar is looked at as a line along which metres are counted; a polygon counts half its
 * perimeter, which for a thin one is its length. Two scars are a candidate pair where they lie
 * within the combined positional accuracy of each other and run the same way. Which metres of which
 * scars are the same is a flow of least cost through the candidate pairs: no metre, on either side,
 * is assigned twice.
 */
package org.meadowmark.core.change.match;
