package org.meadowmark.core.change.effect;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.change.effect.SegmentRole.Part;
import org.meadowmark.core.rank.network.SegmentNetwork;
import org.meadowmark.core.rank.statistics.EmpiricalBayes;
import org.meadowmark.core.rank.statistics.NetworkNeighbours;
import org.meadowmark.core.rank.statistics.ShrunkenRate;

/**
 * Says for every segment whether it is marked, a control, or neither, and why.
 *
 * <p>A control has enough bed in reach in every season, lies farther along the channels from every
 * marked segment than boats that keep clear of a mark would go, and had a like rate before. The
 * rate before is drawn towards the mean of all segments ({@link EmpiricalBayes}): a raw rate would
 * pick controls for their luck in the seasons before, and luck does not last.
 */
final class ControlChoice {
  private final List<Season> seasons;
  private final List<SegmentSeasons> segments;
  private final SegmentNetwork network;
  private final EffectSettings settings;
  private final double eventMetres;

  ControlChoice(
      List<Season> seasons,
      List<SegmentSeasons> segments,
      SegmentNetwork network,
      EffectSettings settings,
      double eventMetres) {
    this.seasons = seasons;
    this.segments = segments;
    this.network = network;
    this.settings = settings;
    this.eventMetres = eventMetres;
  }

  /** Roles in the order of the segments. */
  List<SegmentRole> roles(List<MarkedSegment> marks) {
    Map<String, MarkedSegment> marked = new HashMap<>();
    marks.forEach(mark -> marked.put(mark.segmentId(), mark));
    Periods shared = sharedPeriods(marks);
    List<OptionalDouble> rates = ratesBefore(shared);
    double markedRate = markedRate(marked, shared);
    String[] beside = beside(marked);
    List<SegmentRole> roles = new ArrayList<>();
    for (int i = 0; i < segments.size(); i++) {
      SegmentSeasons segment = segments.get(i);
      MarkedSegment mark = marked.get(segment.segmentId());
      roles.add(
          mark != null
              ? markedRole(segment, mark, rates.get(i))
              : otherRole(segment, rates.get(i), beside[i], markedRate));
    }
    return roles;
  }

  private SegmentRole markedRole(SegmentSeasons segment, MarkedSegment mark, OptionalDouble rate) {
    Periods periods = Periods.around(mark.placed(), seasons);
    String device = mark.device().isEmpty() ? "marker" : mark.device();
    if (!hasBed(segment)) {
      return new SegmentRole(segment.segmentId(), Part.LEFT_OUT, "marked, but " + little(), rate);
    }
    if (periods.before().isEmpty()) {
      return new SegmentRole(
          segment.segmentId(),
          Part.LEFT_OUT,
          device + " placed " + mark.placed() + ": no season ends before that day",
          rate);
    }
    if (periods.after().isEmpty()) {
      return new SegmentRole(
          segment.segmentId(),
          Part.LEFT_OUT,
          device + " placed " + mark.placed() + ": no season starts after that day",
          rate);
    }
    int across = seasons.size() - periods.before().size() - periods.after().size();
    return new SegmentRole(
        segment.segmentId(),
        Part.MARKED,
        device
            + " placed "
            + mark.placed()
            + (across > 0 ? "; the season that this day lies in is not used" : ""),
        rate);
  }

  private SegmentRole otherRole(
      SegmentSeasons segment, OptionalDouble rate, String beside, double markedRate) {
    if (!hasBed(segment)) {
      return new SegmentRole(segment.segmentId(), Part.LEFT_OUT, little(), rate);
    }
    if (!beside.isEmpty()) {
      return new SegmentRole(
          segment.segmentId(),
          Part.BESIDE,
          String.format(
              Locale.ROOT,
              "within %.0f m along the channel of marked %s: damage may have moved here",
              settings.distanceMetres(),
              beside),
          rate);
    }
    if (rate.isEmpty()) {
      return new SegmentRole(
          segment.segmentId(), Part.LEFT_OUT, "no season before the first marker", rate);
    }
    double before = rate.getAsDouble();
    double factor = settings.rateFactor();
    if (before < markedRate / factor || before > markedRate * factor) {
      return new SegmentRole(
          segment.segmentId(),
          Part.LEFT_OUT,
          String.format(
              Locale.ROOT,
              "rate before %.3g is %s than that of the marked segments, %.3g, by more than %.3g"
                  + " times",
              before,
              before < markedRate ? "lower" : "higher",
              markedRate,
              factor),
          rate);
    }
    return new SegmentRole(
        segment.segmentId(),
        Part.CONTROL,
        "no marker, like rate before, far enough from every mark, enough bed",
        rate);
  }

  private boolean hasBed(SegmentSeasons segment) {
    double least = segment.leastBedHectares();
    return least > 0 && least >= settings.leastBedHectares();
  }

  private String little() {
    return String.format(
        Locale.ROOT,
        "less than %.3g ha of bed in reach that every survey looked at",
        settings.leastBedHectares());
  }

  /** Seasons before the first marker that has any. */
  private Periods sharedPeriods(List<MarkedSegment> marks) {
    return marks.stream()
        .map(mark -> Periods.around(mark.placed(), seasons))
        .filter(Periods::areComplete)
        .min((one, other) -> one.before().size() - other.before().size())
        .orElse(new Periods(List.of(), List.of()));
  }

  private List<OptionalDouble> ratesBefore(Periods shared) {
    if (shared.before().isEmpty() || !(eventMetres > 0)) {
      return segments.stream().map(segment -> OptionalDouble.empty()).toList();
    }
    List<Amounts> amounts =
        segments.stream()
            .map(segment -> Amounts.of(segment, shared, seasons, settings.basis()))
            .toList();
    return new EmpiricalBayes(eventMetres)
            .towardsWhole(
                amounts.stream()
                    .mapToDouble(one -> one.exposureBefore() > 0 ? one.metresBefore() : 0)
                    .toArray(),
                amounts.stream().mapToDouble(Amounts::exposureBefore).toArray())
            .stream()
            .map(ShrunkenRate::estimate)
            .toList();
  }

  private double markedRate(Map<String, MarkedSegment> marked, Periods shared) {
    Amounts sum = Amounts.NONE;
    for (SegmentSeasons segment : segments) {
      MarkedSegment mark = marked.get(segment.segmentId());
      if (mark != null && hasBed(segment) && Periods.around(mark.placed(), seasons).areComplete()) {
        sum = sum.plus(Amounts.of(segment, shared, seasons, settings.basis()));
      }
    }
    return sum.exposureBefore() > 0 ? sum.rateBefore() : Double.NaN;
  }

  /** For each segment the first marked one in its neighbourhood, or empty. */
  private String[] beside(Map<String, MarkedSegment> marked) {
    int[][] near = NetworkNeighbours.within(network, settings.distanceMetres());
    String[] beside = new String[segments.size()];
    for (int i = 0; i < beside.length; i++) {
      beside[i] = "";
      for (int other : near[i]) {
        String id = segments.get(other).segmentId();
        if (other != i && beside[i].isEmpty() && marked.containsKey(id)) {
          beside[i] = id;
        }
      }
    }
    return beside;
  }
}
