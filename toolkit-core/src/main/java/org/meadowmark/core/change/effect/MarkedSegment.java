package org.meadowmark.core.change.effect;

import java.time.LocalDate;

/**
 * A channel segment that got a marker.
 *
 * @param segmentId the segment
 * @param placed day from which the marker stood
 * @param device what was placed, in the user's words, or empty
 */
public record MarkedSegment(String segmentId, LocalDate placed, String device) {}
