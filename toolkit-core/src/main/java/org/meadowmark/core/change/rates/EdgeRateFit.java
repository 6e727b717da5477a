package org.meadowmark.core.change.rates;

import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.model.Range;

/**
 * How fast edges moved here, fitted from scars seen open and gone.
 *
 * @param species key of the species, or empty
 * @param scars scars it was fitted from
 * @param closed those of them that were seen gone
 * @param outcome what the scars allow to say
 * @param metresPerYear median rate on a side; empty where the outcome gives none
 * @param interval its interval; empty where it has none, or no end on one side
 * @param logSpread standard deviation of the logarithm of the rate between scars; empty likewise
 */
public record EdgeRateFit(
    String species,
    int scars,
    int closed,
    Outcome outcome,
    OptionalDouble metresPerYear,
    Optional<Interval> interval,
    OptionalDouble logSpread) {

  /** What the scars allow to say. */
  public enum Outcome {
    /** A rate with its interval. */
    FITTED("fitted"),
    /** A rate, but the scars leave it open on one side or both. */
    NO_LIMITS("fitted, but without limits: widths and times vary too little"),
    /**
     * Narrow scars closed and wide ones did not, with no overlap: the rate lies between the two.
     */
    PARTED("between the fastest rate that closed scars need and the slowest that open ones allow"),
    /** Every scar closed: a lower limit only. */
    ALL_CLOSED("every scar closed: there is a lower limit only"),
    /** No scar closed: an upper limit only. */
    NONE_CLOSED("no scar closed: there is an upper limit only"),
    /** Too few scars. */
    TOO_FEW("too few scars");

    private final String label;

    Outcome(String label) {
      this.label = label;
    }

    /** {@return words for tables} */
    public String label() {
      return label;
    }
  }

  /**
   * {@return time in which a scar of some width closes: low by the upper limit, high by the lower}
   *
   * @param widthMetres width of the scar; half of it is the way of each edge
   */
  public Optional<Range> closingYears(double widthMetres) {
    if (metresPerYear.isEmpty() || interval.isEmpty()) {
      return Optional.empty();
    }
    double half = widthMetres / 2;
    return Optional.of(
        new Range(
            half / interval.get().high(),
            half / metresPerYear.getAsDouble(),
            half / interval.get().low()));
  }
}
