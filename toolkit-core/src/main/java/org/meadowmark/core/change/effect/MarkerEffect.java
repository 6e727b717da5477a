package org.meadowmark.core.change.effect;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.change.Interval;

/**
 * Whether markers worked, as far as the seasons can tell.
 *
 * @param settings choices it was worked out with
 * @param verdict what can be said
 * @param words the same in a sentence or two
 * @param roles what each segment is in the comparison, in segment order
 * @param rates rates before and after; empty where nothing can be compared
 * @param difference marked change less control change, in metres by exposure and year
 * @param differenceInterval its interval, Welch's t over segments; empty with too few segments
 * @param permutation how often other arrangements of the marks are as clear; empty with too few
 * @param ratio rate after / before beside marks divided by that of controls; empty where undefined
 * @param ratioInterval its interval, jackknife over segments; empty with too few segments
 * @param seasonTest seasons as the sample; empty with too few seasons or markers of several dates
 * @param besideRatio the same ratio for the segments beside the marked ones: above 1 where damage
 *     may have moved there
 * @param power chance of detecting a drop; empty where it cannot be worked out
 */
public record MarkerEffect(
    EffectSettings settings,
    Verdict verdict,
    String words,
    List<SegmentRole> roles,
    Optional<Rates> rates,
    OptionalDouble difference,
    Optional<Interval> differenceInterval,
    Optional<PermutationTest> permutation,
    OptionalDouble ratio,
    Optional<Interval> ratioInterval,
    Optional<SeasonTest> seasonTest,
    OptionalDouble besideRatio,
    Optional<PowerForecast> power) {

  /** What can be said. */
  public enum Verdict {
    /** No marker can be compared at all. */
    NOTHING_TO_COMPARE("nothing to compare"),
    /** Too few segments: no difference, however clear, would be evidence. */
    TOO_FEW_SEGMENTS("too few segments to tell"),
    /** No difference that chance would not make. */
    NOT_SHOWN("no effect shown"),
    /** Fewer new scars than expected. */
    DROP("fewer new scars"),
    /** More new scars than expected. */
    RISE("more new scars");

    private final String label;

    Verdict(String label) {
      this.label = label;
    }

    /** {@return words for tables} */
    public String label() {
      return label;
    }
  }

  /**
   * Rates of the two groups.
   *
   * @param markedSegments marked segments
   * @param controlSegments controls
   * @param markedBefore rate beside marks before
   * @param markedAfter the same after
   * @param controlBefore rate beside controls before
   * @param controlAfter the same after
   */
  public record Rates(
      int markedSegments,
      int controlSegments,
      double markedBefore,
      double markedAfter,
      double controlBefore,
      double controlAfter) {}

  /**
   * Keeps a copy of the roles.
   *
   * @param settings choices it was worked out with
   * @param verdict what can be said
   * @param words the same in a sentence or two
   * @param roles what each segment is in the comparison, in segment order
   * @param rates rates before and after; empty where nothing can be compared
   * @param difference marked change less control change, in metres by exposure and year
   * @param differenceInterval its interval, Welch's t over segments; empty with too few segments
   * @param permutation how often other arrangements of the marks are as clear; empty with too few
   * @param ratio rate after / before beside marks divided by that of controls; empty where
   *     undefined
   * @param ratioInterval its interval, jackknife over segments; empty with too few segments
   * @param seasonTest seasons as the sample; empty with too few seasons or markers of several dates
   * @param besideRatio the same ratio for the segments beside the marked ones: above 1 where damage
   *     may have moved there
   * @param power chance of detecting a drop; empty where it cannot be worked out
   * @throws NullPointerException if the list or a role in it is null
   */
  public MarkerEffect {
    roles = List.copyOf(roles);
  }
}
