/**
 * One score a segment from weighted terms, and how much its rank hangs on weights and widths. Knows
 * segments only by position.
 */
package org.meadowmark.core.rank.score;
