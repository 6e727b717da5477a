/**
 * Which segments to take: at most so many contiguous sets within a total length that cover most.
 * Knows segments only by position, by length and by value.
 */
package org.meadowmark.core.rank.zone.choice;
