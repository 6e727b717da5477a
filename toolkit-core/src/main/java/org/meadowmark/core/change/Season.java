package org.meadowmark.core.change;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * The time between two surveys that follow each other.
 *
 * @param start day of the earlier survey
 * @param end day of the later survey, after {@code start}
 */
public record Season(LocalDate start, LocalDate end) {
  private static final double DAYS_A_YEAR = 365.25;

  /**
   * Checks the order of the days.
   *
   * @param start day of the earlier survey
   * @param end day of the later survey, after {@code start}
   * @throws IllegalArgumentException if the end is not after the start
   */
  public Season {
    if (!end.isAfter(start)) {
      throw new IllegalArgumentException("a season ends after it starts: " + start + ", " + end);
    }
  }

  /** {@return length in years of 365.25 days} */
  public double years() {
    return ChronoUnit.DAYS.between(start, end) / DAYS_A_YEAR;
  }

  /** {@return the two days, for people} */
  public String label() {
    return start + " to " + end;
  }
}
