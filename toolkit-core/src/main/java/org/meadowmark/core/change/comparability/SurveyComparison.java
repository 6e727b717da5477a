package org.meadowmark.core.change.comparability;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.meadowmark.core.change.CombinedAccuracy;
import org.meadowmark.core.change.CommonGround;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.change.comparability.SurveyDifference.Judgement;
import org.meadowmark.core.survey.ComparisonParameters;
import org.meadowmark.core.survey.PositionalAccuracy;

/** Holds two surveys against each other, aspect by aspect. */
public final class SurveyComparison {
  private static final int DAYS_A_YEAR = 365;
  private static final double SAME = 1e-9;
  private static final double PERCENT = 100;

  private final SurveyTraits earlier;
  private final SurveyTraits later;
  private final CommonGround ground;
  private final ComparisonParameters limits;
  private final List<SurveyDifference> differences = new ArrayList<>();

  private SurveyComparison(
      SurveyTraits earlier, SurveyTraits later, CommonGround ground, ComparisonParameters limits) {
    this.earlier = earlier;
    this.later = later;
    this.ground = ground;
    this.limits = limits;
  }

  /**
   * {@return differences in the order of aspects, each aspect once}
   *
   * @param earlier the earlier survey
   * @param later the later survey
   * @param ground what both looked at
   * @param limits from where a difference is unsafe
   */
  public static List<SurveyDifference> of(
      SurveyTraits earlier, SurveyTraits later, CommonGround ground, ComparisonParameters limits) {
    return new SurveyComparison(earlier, later, ground, limits).differences();
  }

  /**
   * {@return why surveys are not to be compared; empty where nothing speaks against it}
   *
   * @param differences how they differ
   * @param despite what is let pass
   */
  public static Optional<String> refusal(List<SurveyDifference> differences, Set<Aspect> despite) {
    List<SurveyDifference> unsafe =
        differences.stream()
            .filter(difference -> difference.judgement() == Judgement.UNSAFE)
            .filter(difference -> !despite.contains(difference.aspect()))
            .toList();
    if (unsafe.isEmpty()) {
      return Optional.empty();
    }
    SurveyDifference first = unsafe.get(0);
    return Optional.of(
        "the surveys of "
            + first.season().start()
            + " and "
            + first.season().end()
            + " are not safe to compare by "
            + first.aspect().label()
            + " ("
            + first.words()
            + "); compare them nevertheless with --despite "
            + first.aspect().key()
            + (unsafe.size() > 1 ? " (and " + (unsafe.size() - 1) + " more differences)" : ""));
  }

  private List<SurveyDifference> differences() {
    seasonOfYear();
    method();
    ratio(
        Aspect.EFFORT,
        perHectare(earlier.facts().effortHours(), ground.earlierHectares()),
        perHectare(later.facts().effortHours(), ground.laterHectares()),
        limits.unsafeEffortRatio(),
        "%.3g h per hectare of bed",
        "who looks longer sees more scars");
    ratio(
        Aspect.WATER_CLARITY,
        earlier.facts().secchiDepthMetres(),
        later.facts().secchiDepthMetres(),
        limits.unsafeClarityRatio(),
        "Secchi depth %.3g m",
        "in clearer water more scars are seen");
    ratio(
        Aspect.RESOLUTION,
        earlier.pixelSizeMetres(),
        later.pixelSizeMetres(),
        limits.unsafePixelRatio(),
        "pixels of %.3g m",
        "finer imagery shows narrower scars, which would count as new or healed");
    position();
    surveyedArea();
    add(
        Aspect.REFERENCE_SYSTEM,
        earlier.scarCrs().equals(later.scarCrs()) ? Judgement.ALIKE : Judgement.DIFFERENT,
        earlier.scarCrs(),
        later.scarCrs(),
        earlier.scarCrs().equals(later.scarCrs())
            ? "one reference system"
            : "both are brought to one grid; a shift between their datums would stay");
    beds();
    add(
        Aspect.CHANNELS,
        earlier.channels() == later.channels() ? Judgement.ALIKE : Judgement.DIFFERENT,
        "",
        "",
        earlier.channels() == later.channels()
            ? "the same channels"
            : "segments are those of the last survey's channels");
    return List.copyOf(differences);
  }

  private void add(Aspect aspect, Judgement judgement, String before, String after, String words) {
    differences.add(
        new SurveyDifference(
            new Season(earlier.date(), later.date()), aspect, judgement, before, after, words));
  }

  /** Days apart within the year, the short way round. */
  static int daysApart(LocalDate one, LocalDate other) {
    int days =
        Math.abs(
            Math.min(one.getDayOfYear(), DAYS_A_YEAR)
                - Math.min(other.getDayOfYear(), DAYS_A_YEAR));
    return Math.min(days, DAYS_A_YEAR - days);
  }

  private void seasonOfYear() {
    int days = daysApart(earlier.date(), later.date());
    boolean unsafe = days > limits.unsafeSeasonDays();
    add(
        Aspect.SEASON_OF_YEAR,
        unsafe ? Judgement.UNSAFE : days > 0 ? Judgement.DIFFERENT : Judgement.ALIKE,
        earlier.date().toString(),
        later.date().toString(),
        days
            + " days apart within the year"
            + (unsafe ? ": leaves hide scars in one season and show them in another" : ""));
  }

  private void method() {
    if (earlier.facts().method().isEmpty() || later.facts().method().isEmpty()) {
      add(
          Aspect.METHOD,
          Judgement.NOT_STATED,
          earlier.facts().method().orElse(""),
          later.facts().method().orElse(""),
          "give method in both survey files");
      return;
    }
    String before = earlier.facts().method().get();
    String after = later.facts().method().get();
    boolean same = before.equalsIgnoreCase(after);
    add(
        Aspect.METHOD,
        same ? Judgement.ALIKE : Judgement.DIFFERENT,
        before,
        after,
        same ? "one method" : "another method may see other scars");
  }

  private void ratio(
      Aspect aspect,
      OptionalDouble before,
      OptionalDouble after,
      double unsafeRatio,
      String format,
      String words) {
    String one = text(before, format);
    String other = text(after, format);
    if (before.isEmpty() || after.isEmpty()) {
      add(aspect, Judgement.NOT_STATED, one, other, "give it in both survey files");
      return;
    }
    double low = Math.min(before.getAsDouble(), after.getAsDouble());
    double factor = Math.max(before.getAsDouble(), after.getAsDouble()) / low;
    Judgement judgement =
        factor > unsafeRatio * (1 + SAME)
            ? Judgement.UNSAFE
            : factor > 1 + SAME ? Judgement.DIFFERENT : Judgement.ALIKE;
    add(
        aspect,
        judgement,
        one,
        other,
        judgement == Judgement.ALIKE
            ? "the same"
            : String.format(Locale.ROOT, "differs %.3g times: %s", factor, words));
  }

  private static OptionalDouble perHectare(OptionalDouble hours, double hectares) {
    return hours.isPresent() && hectares > 0
        ? OptionalDouble.of(hours.getAsDouble() / hectares)
        : OptionalDouble.empty();
  }

  private static String text(OptionalDouble value, String format) {
    return value.isPresent() ? String.format(Locale.ROOT, format, value.getAsDouble()) : "";
  }

  private void position() {
    String before = earlier.accuracy().map(SurveyComparison::error).orElse("");
    String after = later.accuracy().map(SurveyComparison::error).orElse("");
    if (before.isEmpty() || after.isEmpty()) {
      add(
          Aspect.POSITIONAL_ACCURACY,
          Judgement.UNSAFE,
          before,
          after,
          "not stated for both: give position_rmse_m, or scars that only look moved count as healed"
              + " and new");
      return;
    }
    double combined =
        CombinedAccuracy.toleranceMetres(earlier.accuracy().get(), later.accuracy().get(), 0);
    boolean unsafe = combined > limits.unsafePositionMetres();
    add(
        Aspect.POSITIONAL_ACCURACY,
        unsafe ? Judgement.UNSAFE : before.equals(after) ? Judgement.ALIKE : Judgement.DIFFERENT,
        before,
        after,
        String.format(
            Locale.ROOT,
            "combined accuracy at 95 %% is %.3g m%s",
            combined,
            unsafe ? ": scars beside each other are taken for one" : ""));
  }

  private static String error(PositionalAccuracy accuracy) {
    return String.format(Locale.ROOT, "RMSE %.3g m", accuracy.radialRmseMetres());
  }

  private void surveyedArea() {
    double share = ground.commonShare();
    boolean unsafe = share < limits.unsafeCommonShare();
    boolean same =
        Math.abs(ground.earlierHectares() - ground.hectares()) <= SAME * ground.earlierHectares()
            && Math.abs(ground.laterHectares() - ground.hectares())
                <= SAME * ground.laterHectares();
    add(
        Aspect.SURVEYED_AREA,
        unsafe ? Judgement.UNSAFE : same ? Judgement.ALIKE : Judgement.DIFFERENT,
        hectares(ground.earlierHectares()),
        hectares(ground.laterHectares()),
        String.format(
            Locale.ROOT,
            "%s in common, %.1f %% of the smaller",
            hectares(ground.hectares()),
            PERCENT * share));
  }

  private void beds() {
    add(
        Aspect.BED_LAYER,
        ground.sameBeds() ? Judgement.ALIKE : Judgement.DIFFERENT,
        hectares(ground.earlierHectares()),
        hectares(ground.laterHectares()),
        ground.sameBeds()
            ? "the same beds"
            : "rates are of the later survey's beds; where beds were drawn anew, change of the"
                + " drawing and of the grass cannot be told apart");
  }

  private static String hectares(double value) {
    return String.format(Locale.ROOT, "%.4g ha of surveyed bed", value);
  }
}
