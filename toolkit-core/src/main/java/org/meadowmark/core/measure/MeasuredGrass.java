package org.meadowmark.core.measure;

import java.util.List;

/**
 * A meadow of touching beds after scarring.
 *
 * @param group the beds, joined
 * @param after pieces that are left
 * @param bedIds beds that each patch is part of
 * @param gaps gaps between the patches, by their position here
 */
record MeasuredGrass(GrassGroup group, Pieces after, List<List<String>> bedIds, GapColumns gaps) {}
