package org.meadowmark.core.change.effect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.change.effect.MarkerEffect.Rates;
import org.meadowmark.core.change.effect.MarkerEffect.Verdict;
import org.meadowmark.core.change.effect.SegmentRole.Part;
import org.meadowmark.core.rank.network.SegmentNetwork;

/**
 * Compares marked channel segments with controls, before and after.
 *
 * <p>Rate of a segment: new scar metres over its seasons divided by exposure times years, so that
 * long and short seasons count by their length. Difference in differences: the mean change of the
 * marked rates less that of the controls, weighted by exposure.
 *
 * <p>Time: permutations times segments, and segments times their neighbours.
 */
public final class MarkerEffectFinder {
  private static final int FEWEST = 2;

  private final List<Season> seasons;
  private final List<SegmentSeasons> segments;
  private final SegmentNetwork network;
  private final double eventMetres;
  private final EffectSettings settings;

  /**
   * Prepares for some seasons.
   *
   * @param seasons in order of time, none overlapping
   * @param segments every segment of the channels, in id order
   * @param network how they meet, at the same positions
   * @param eventMetres Σl²/Σl of the pieces of new scar on segments; 0 where there is none
   * @param settings choices
   * @throws IllegalArgumentException if a segment has not one figure a season, or the network is of
   *     another size
   */
  public MarkerEffectFinder(
      List<Season> seasons,
      List<SegmentSeasons> segments,
      SegmentNetwork network,
      double eventMetres,
      EffectSettings settings) {
    this.seasons = List.copyOf(seasons);
    this.segments = List.copyOf(segments);
    this.network = network;
    this.eventMetres = eventMetres;
    this.settings = settings;
    if (network.size() != segments.size()) {
      throw new IllegalArgumentException("network and segments differ in number");
    }
    for (SegmentSeasons segment : segments) {
      if (segment.newScarMetres().size() != seasons.size()) {
        throw new IllegalArgumentException(segment.segmentId() + ": not one figure a season");
      }
    }
  }

  /**
   * {@return the effect of some markers, at most one a segment}
   *
   * @param marks what was marked and since when
   */
  public MarkerEffect find(List<MarkedSegment> marks) {
    List<SegmentRole> roles =
        new ControlChoice(seasons, segments, network, settings, eventMetres).roles(marks);
    List<MarkedSegment> usable =
        marks.stream().filter(mark -> has(roles, mark.segmentId(), Part.MARKED)).toList();
    if (usable.isEmpty()) {
      return nothing(roles, EffectWords.nothing(marks, roles, seasons));
    }
    Map<Periods, Integer> groups = new LinkedHashMap<>();
    usable.forEach(
        mark -> groups.putIfAbsent(Periods.around(mark.placed(), seasons), groups.size()));
    Design design = design(roles, usable, groups, Part.MARKED);
    if (design.controls() == 0) {
      return nothing(roles, "No segment can serve as a control: see the reasons by segment.");
    }
    return compare(design, roles, usable, groups);
  }

  private static boolean has(List<SegmentRole> roles, String segmentId, Part part) {
    return roles.stream()
        .anyMatch(role -> role.segmentId().equals(segmentId) && role.part() == part);
  }

  private MarkerEffect nothing(List<SegmentRole> roles, String words) {
    return new MarkerEffect(
        settings,
        Verdict.NOTHING_TO_COMPARE,
        words,
        roles,
        Optional.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        Optional.empty());
  }

  /** Controls, and the segments of one part as the marked ones; those beside take group 0. */
  private Design design(
      List<SegmentRole> roles,
      List<MarkedSegment> marks,
      Map<Periods, Integer> groups,
      Part marked) {
    Map<String, Integer> groupOf = new HashMap<>();
    marks.forEach(
        mark -> groupOf.put(mark.segmentId(), groups.get(Periods.around(mark.placed(), seasons))));
    List<List<Amounts>> amounts = new ArrayList<>();
    List<Integer> labels = new ArrayList<>();
    for (int i = 0; i < segments.size(); i++) {
      SegmentRole role = roles.get(i);
      if (role.part() == Part.CONTROL || role.part() == marked) {
        SegmentSeasons segment = segments.get(i);
        amounts.add(
            groups.keySet().stream()
                .map(periods -> Amounts.of(segment, periods, seasons, settings.basis()))
                .toList());
        labels.add(
            role.part() == Part.CONTROL
                ? Design.CONTROL
                : groupOf.getOrDefault(segment.segmentId(), 0));
      }
    }
    return new Design(amounts, labels.stream().mapToInt(Integer::intValue).toArray());
  }

  private MarkerEffect compare(
      Design design,
      List<SegmentRole> roles,
      List<MarkedSegment> marks,
      Map<Periods, Integer> groups) {
    Amounts marked = design.marksTogether();
    Amounts controls = design.controlsTogether();
    Rates rates =
        new Rates(
            design.marked(),
            design.controls(),
            marked.rateBefore(),
            marked.rateAfter(),
            controls.rateBefore(),
            controls.rateAfter());
    boolean enough = design.marked() >= FEWEST && design.controls() >= FEWEST;
    DifferenceOfMeans difference = design.difference();
    Optional<Interval> interval =
        enough ? difference.interval(settings.confidence()) : Optional.empty();
    Optional<PermutationTest> permutation =
        enough
            ? Optional.of(PermutationTest.of(design, settings.mostPermutations(), settings.seed()))
            : Optional.empty();
    Optional<RatioOfRatios> ratio = RatioOfRatios.of(design);
    Optional<Interval> ratioInterval =
        enough ? ratio.flatMap(one -> one.interval(settings.confidence())) : Optional.empty();
    Verdict verdict = verdict(permutation, ratio);
    return new MarkerEffect(
        settings,
        verdict,
        EffectWords.of(verdict, rates, permutation, ratio, ratioInterval, settings),
        roles,
        Optional.of(rates),
        OptionalDouble.of(difference.difference()),
        interval,
        permutation,
        ratio.isPresent() ? OptionalDouble.of(ratio.get().ratio()) : OptionalDouble.empty(),
        ratioInterval,
        groups.size() == 1 ? seasonTest(roles, marks.get(0)) : Optional.empty(),
        besideRatio(roles, groups),
        enough ? ratio.flatMap(one -> power(design, one, roles)) : Optional.empty());
  }

  private Verdict verdict(Optional<PermutationTest> permutation, Optional<RatioOfRatios> ratio) {
    double level = 1 - settings.confidence();
    if (permutation.isEmpty() || permutation.get().smallestPValue() > level) {
      return Verdict.TOO_FEW_SEGMENTS;
    }
    if (permutation.get().pValue() > level || ratio.isEmpty()) {
      return Verdict.NOT_SHOWN;
    }
    return ratio.get().ratio() < 1 ? Verdict.DROP : Verdict.RISE;
  }

  private Optional<SeasonTest> seasonTest(List<SegmentRole> roles, MarkedSegment mark) {
    Periods periods = Periods.around(mark.placed(), seasons);
    return SeasonTest.of(
        differences(roles, periods.before()),
        differences(roles, periods.after()),
        settings.confidence());
  }

  private double[] differences(List<SegmentRole> roles, List<Integer> positions) {
    return positions.stream()
        .mapToDouble(season -> rate(roles, season, Part.MARKED) - rate(roles, season, Part.CONTROL))
        .toArray();
  }

  private double rate(List<SegmentRole> roles, int season, Part part) {
    double metres = 0;
    for (int i = 0; i < segments.size(); i++) {
      if (roles.get(i).part() == part) {
        metres += segments.get(i).newScarMetres().get(season);
      }
    }
    return metres / (exposure(roles, season, part) * seasons.get(season).years());
  }

  private double exposure(List<SegmentRole> roles, int season, Part part) {
    double exposure = 0;
    for (int i = 0; i < segments.size(); i++) {
      if (roles.get(i).part() == part) {
        exposure += segments.get(i).exposure(settings.basis(), season);
      }
    }
    return exposure;
  }

  private OptionalDouble besideRatio(List<SegmentRole> roles, Map<Periods, Integer> groups) {
    if (groups.size() > 1 || roles.stream().noneMatch(role -> role.part() == Part.BESIDE)) {
      return OptionalDouble.empty();
    }
    return RatioOfRatios.of(design(roles, List.of(), groups, Part.BESIDE)).stream()
        .mapToDouble(RatioOfRatios::ratio)
        .findFirst();
  }

  private Optional<PowerForecast> power(
      Design design, RatioOfRatios ratio, List<SegmentRole> roles) {
    int last = seasons.size() - 1;
    double years = seasons.stream().mapToDouble(Season::years).average().orElseThrow();
    PowerForecast.Basis basis =
        new PowerForecast.Basis(
            design.marksTogether(),
            design.controlsTogether(),
            exposure(roles, last, Part.MARKED) * years,
            exposure(roles, last, Part.CONTROL) * years,
            eventMetres,
            ratio);
    return basis.isComplete() ? Optional.of(PowerForecast.of(basis, settings)) : Optional.empty();
  }
}
