package org.meadowmark.core.measure.recovery;

import org.meadowmark.core.model.Range;

/** Which end of what is not known is taken, seen from the loss. */
public enum Estimate {
  /** Fast regrowth and good survival: the loss is low. */
  LOW("low"),
  /** The middle of each. */
  MIDDLE("middle"),
  /** Slow regrowth and poor survival: the loss is high. */
  HIGH("high");

  private final String key;

  Estimate(String key) {
    this.key = key;
  }

  /** {@return name used in tables} */
  public String key() {
    return key;
  }

  /** The end of a figure that lowers the loss when it is high, such as a rate or a survival. */
  double ofHelp(Range range) {
    return switch (this) {
      case LOW -> range.high();
      case MIDDLE -> range.middle();
      case HIGH -> range.low();
    };
  }

  /**
   * {@return the end of a figure that rises with the loss, such as years to close, or the loss}
   *
   * @param range the figure with its low end, middle and high end
   */
  public double ofLoss(Range range) {
    return switch (this) {
      case LOW -> range.low();
      case MIDDLE -> range.middle();
      case HIGH -> range.high();
    };
  }
}
