package org.meadowmark.core.change.match;

import java.util.Optional;

/**
 * A scar's trace with the part of it that both surveys looked at.
 *
 * @param trace the scar
 * @param spans stretches of a line inside both surveyed areas; none for a polygon
 * @param gridMetres how much of the trace is inside
 */
record ComparedTrace(Trace trace, double[] spans, double gridMetres) {

  /** Ground length of the whole scar. */
  double metres() {
    return trace.length() / trace.lengthFactor();
  }

  /** Ground length inside both surveyed areas. */
  double comparableMetres() {
    return gridMetres / trace.lengthFactor();
  }

  static ComparedTrace of(Trace trace, Optional<ComparableArea> area) {
    if (trace.length() == 0) {
      return new ComparedTrace(trace, Spans.NONE, 0);
    }
    if (area.isEmpty()) {
      return whole(trace);
    }
    return area.get().clip(trace);
  }

  static ComparedTrace whole(Trace trace) {
    return new ComparedTrace(
        trace, trace.isLine() ? new double[] {0, trace.length()} : Spans.NONE, trace.length());
  }
}
