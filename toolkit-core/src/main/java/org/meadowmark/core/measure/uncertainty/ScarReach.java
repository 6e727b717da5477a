package org.meadowmark.core.measure.uncertainty;

import java.util.List;

/** How far the errors of a scar may take it from where it is mapped. */
public final class ScarReach {
  private ScarReach() {}

  /** How far a scar may reach from its line or outline, on the grid. */
  public static double of(UncertainScar scar, ErrorModel model) {
    return new ScarLayer(List.of(scar), model).reach(0);
  }
}
