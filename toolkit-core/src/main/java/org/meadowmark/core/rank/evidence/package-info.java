/**
 * What speaks for or against damage coming from a channel segment: angles, edges, depths, beds.
 * What is not known stays without a value and is named as a gap. Knows segments only by position.
 */
package org.meadowmark.core.rank.evidence;
