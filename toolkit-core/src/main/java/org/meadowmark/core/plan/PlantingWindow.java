package org.meadowmark.core.plan;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Optional;

/**
 * The months in which grass can be planted.
 *
 * @param firstMonth 1–12
 * @param lastMonth 1–12; earlier than the first where the window passes the new year
 */
record PlantingWindow(int firstMonth, int lastMonth) {
  /** First day of a season; season 1 is the first that starts after the survey. */
  Optional<LocalDate> from(Optional<LocalDate> survey, int season) {
    return survey.map(
        date -> {
          LocalDate thisYear = LocalDate.of(date.getYear(), firstMonth, 1);
          LocalDate first = thisYear.isAfter(date) ? thisYear : thisYear.plusYears(1);
          return first.plusYears(season - 1L);
        });
  }

  /** Last day of a season. */
  Optional<LocalDate> to(Optional<LocalDate> survey, int season) {
    return from(survey, season)
        .map(
            from ->
                YearMonth.of(from.getYear() + (lastMonth < firstMonth ? 1 : 0), lastMonth)
                    .atEndOfMonth());
  }
}
