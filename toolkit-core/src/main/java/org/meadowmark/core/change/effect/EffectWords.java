package org.meadowmark.core.change.effect;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.change.effect.MarkerEffect.Rates;
import org.meadowmark.core.change.effect.MarkerEffect.Verdict;
import org.meadowmark.core.change.effect.SegmentRole.Part;

/** What the comparison says, in sentences. */
final class EffectWords {
  private static final double PERCENT = 100;

  private EffectWords() {}

  static String nothing(List<MarkedSegment> marks, List<SegmentRole> roles, List<Season> seasons) {
    if (marks.isEmpty()) {
      return "No marked segment is known: give the markers' file.";
    }
    if (seasons.size() < 2) {
      return "A marker is judged by a season before and a season after it, which takes three"
          + " surveys or more.";
    }
    String reason =
        roles.stream()
            .filter(role -> role.part() == Part.LEFT_OUT)
            .filter(
                role -> marks.stream().anyMatch(mark -> mark.segmentId().equals(role.segmentId())))
            .map(role -> role.segmentId() + ": " + role.reason())
            .findFirst()
            .orElse("see the reasons by segment");
    return "No marked segment can be compared (" + reason + ").";
  }

  static String of(
      Verdict verdict,
      Rates rates,
      Optional<PermutationTest> permutation,
      Optional<RatioOfRatios> ratio,
      Optional<Interval> interval,
      EffectSettings settings) {
    String seen = seen(rates, ratio, interval, settings);
    return switch (verdict) {
      case TOO_FEW_SEGMENTS ->
          "Too few segments to tell ("
              + rates.markedSegments()
              + " marked, "
              + rates.controlSegments()
              + " controls"
              + permutation
                  .map(
                      test ->
                          String.format(
                              Locale.ROOT,
                              ": even the clearest difference would have p = %.2g",
                              test.smallestPValue()))
                  .orElse("")
              + "). "
              + seen;
      case NOT_SHOWN -> "No effect shown (" + p(permutation) + "). " + seen;
      case DROP ->
          "Fewer new scars beside the marks than expected (" + p(permutation) + "). " + seen;
      case RISE ->
          "More new scars beside the marks than expected (" + p(permutation) + "). " + seen;
      case NOTHING_TO_COMPARE -> seen;
    };
  }

  private static String p(Optional<PermutationTest> permutation) {
    return permutation
        .map(
            test ->
                String.format(
                    Locale.ROOT,
                    "p = %.2g by %d %s arrangements",
                    test.pValue(),
                    test.arrangements(),
                    test.isExact() ? "(all)" : "drawn"))
        .orElse("no p-value");
  }

  private static String seen(
      Rates rates,
      Optional<RatioOfRatios> ratio,
      Optional<Interval> interval,
      EffectSettings settings) {
    if (ratio.isEmpty()) {
      return "The ratio is not defined, since "
          + (rates.markedBefore() > 0 ? "the controls have" : "the marked segments had before")
          + " no new scar.";
    }
    double change = PERCENT * (ratio.get().ratio() - 1);
    String range =
        interval
            .map(
                limits ->
                    String.format(
                        Locale.ROOT,
                        " (%.0f %% interval %+.0f %% to %+.0f %%)",
                        PERCENT * settings.confidence(),
                        PERCENT * (limits.low() - 1),
                        PERCENT * (limits.high() - 1)))
            .orElse(" (no interval)");
    return String.format(
        Locale.ROOT,
        "New scars beside the marks changed by %+.0f %% against the controls%s.",
        change,
        range);
  }
}
