package org.meadowmark.core.measure.uncertainty;

import java.util.List;

/** How far the errors of a scar may take it from where it is mapped. */
public final class ScarReach {
  private ScarReach() {}

  /**
   * {@return how far a scar may reach from its line or outline, on the grid: half its width and a
   * shift, each so large that hardly a draw is larger (3 and 4 standard deviations)}
   *
   * @param scar the scar with its errors
   * @param model what is drawn
   */
  public static double of(UncertainScar scar, ErrorModel model) {
    return new ScarLayer(List.of(scar), model).reach(0);
  }
}
