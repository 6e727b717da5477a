package org.meadowmark.core.measure.uncertainty;

import java.util.Optional;
import org.meadowmark.core.survey.PositionalAccuracy;

/**
 * What is drawn, and how often.
 *
 * @param draws number of draws, at least 1
 * @param seed seed of all of them
 * @param position accuracy of scar positions; empty where it is not stated, and positions are held
 */
public record ErrorModel(int draws, long seed, Optional<PositionalAccuracy> position) {
  /**
   * Refuses a model that draws nothing.
   *
   * @param draws number of draws, at least 1
   * @param seed seed of all of them
   * @param position accuracy of scar positions; empty where it is not stated, and positions are
   *     held
   * @throws IllegalArgumentException if the number of draws is below 1
   */
  public ErrorModel {
    if (draws < 1) {
      throw new IllegalArgumentException("at least one draw: " + draws);
    }
  }
}
