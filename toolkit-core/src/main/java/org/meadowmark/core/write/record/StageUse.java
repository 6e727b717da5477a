package org.meadowmark.core.write.record;

import java.time.Duration;
import java.util.Objects;

/**
 * What a stage of a run took.
 *
 * @param stage name
 * @param wall wall time
 * @param peakHeapBytes sum of the peaks of the heap's pools while it ran: an upper bound of the
 *     heap in use at any moment, garbage included
 */
public record StageUse(String stage, Duration wall, long peakHeapBytes) {

  /**
   * Takes what was measured as it is.
   *
   * @param stage name
   * @param wall wall time
   * @param peakHeapBytes sum of the peaks of the heap's pools while it ran: an upper bound of the
   *     heap in use at any moment, garbage included
   * @throws NullPointerException if {@code stage} or {@code wall} is null
   */
  public StageUse {
    Objects.requireNonNull(stage, "stage");
    Objects.requireNonNull(wall, "wall");
  }
}
