package org.meadowmark.core.measure.recovery;

import java.util.Optional;
import org.meadowmark.core.model.Range;

/**
 * How fast a scar's edge moves, and where that is from.
 *
 * @param metresPerYear rate on a side; empty where none is known
 * @param basis in words, why there is none where there is none
 */
record EdgeRate(Optional<Range> metresPerYear, String basis) {}
