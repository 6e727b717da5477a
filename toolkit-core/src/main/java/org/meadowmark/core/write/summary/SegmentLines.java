package org.meadowmark.core.write.summary;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.evidence.ScarPattern;
import org.meadowmark.core.rank.score.SegmentScore;
import org.meadowmark.core.rank.statistics.HotSpotFinder;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.RankingParameters;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;
import org.meadowmark.core.write.SegmentLabel;

/** What the summary says about channel segments, and how sure that is. */
final class SegmentLines {
  private static final int MOST_NAMED = 3;
  private static final int MOST_ROWS = 10;
  private static final double SURE = 0.9;

  private final AssessedSurvey assessed;
  private final ChannelRanking ranking;
  private final Parameters parameters;
  private final List<RankedSegment> leading;

  SegmentLines(AssessedSurvey assessed) {
    this.assessed = assessed;
    this.ranking = assessed.ranking();
    this.parameters = assessed.definition().parameters();
    this.leading =
        ranking.segments().stream()
            .filter(segment -> segment.rank().isPresent() && segment.score().isPresent())
            .filter(segment -> segment.ratePerHectare().orElse(0) > 0)
            .sorted(
                Comparator.<RankedSegment>comparingInt(segment -> segment.rank().getAsInt())
                    .thenComparing(segment -> segment.segment().id(), Ids.ORDER))
            .limit(MOST_ROWS)
            .toList();
  }

  /** The ten segments of the highest scores that have scars. */
  List<RankedSegment> leading() {
    return leading;
  }

  String answer() {
    if (ranking.segments().isEmpty()) {
      return "No channel was given, so no segment can be ranked.";
    }
    if (leading.isEmpty()) {
      return "No scar lies within reach of a segment that has enough bed beside it. "
          + attribution();
    }
    return "By score: "
        + leading.stream().limit(MOST_NAMED).map(this::named).collect(Collectors.joining("; "))
        + ". The rate is scar length for each hectare of bed within "
        + Figures.chosenLength(parameters.channelReachMetres())
        + ". "
        + attribution();
  }

  /** How far to trust that; empty text where no segment leads. */
  String sureness() {
    return leading.isEmpty()
        ? ""
        : (steadiness() + wantOfData() + hotSpots() + gaps()).stripTrailing();
  }

  private String named(RankedSegment segment) {
    String leadingCause = segment.leadingCause();
    String cause =
        switch (leadingCause) {
          case "" -> "";
          case ReferenceTables.UNKNOWN_CAUSE -> ", mostly of unknown cause";
          default -> ", mostly " + cause(leadingCause);
        };
    ScarPattern pattern = segment.evidence().pattern();
    return SegmentLabel.of(segment.segment())
        + " ("
        + Figures.number(score(segment).score())
        + "; "
        + Figures.rate(segment.ratePerHectare().orElseThrow())
        + interval(segment)
        + cause
        + (pattern == ScarPattern.NONE ? "" : ", " + pattern.key())
        + ")";
  }

  private static String interval(RankedSegment segment) {
    OptionalDouble low = segment.statistics().rate().low();
    OptionalDouble high = segment.statistics().rate().high();
    if (low.isEmpty() || high.isEmpty() || segment.statistics().rate().collapsed()) {
      return "";
    }
    return ", smoothed "
        + Figures.number(low.getAsDouble())
        + " to "
        + Figures.number(high.getAsDouble());
  }

  private String steadiness() {
    RankingParameters choices = parameters.ranking();
    OptionalDouble least =
        leading.stream()
            .map(segment -> score(segment).topTenShare())
            .filter(OptionalDouble::isPresent)
            .mapToDouble(OptionalDouble::getAsDouble)
            .min();
    if (least.isEmpty()) {
      return "";
    }
    long sure = leading.stream().filter(s -> score(s).topTenShare().orElse(0) >= SURE).count();
    return "With weights drawn within "
        + Figures.chosenPercent(choices.scoreWeightSpread())
        + " of their values and with scar widths drawn, "
        + Figures.count(choices.scoreDraws(), "draw", "draws")
        + ", seed "
        + parameters.seed()
        + ", "
        + Figures.count(sure)
        + " of the first "
        + Figures.count(leading.size())
        + " stay in the top ten in at least "
        + Figures.chosenPercent(SURE)
        + " of draws, the least steady in "
        + Figures.percent(least.getAsDouble())
        + ". ";
  }

  private String hotSpots() {
    List<RankedSegment> tested =
        ranking.segments().stream()
            .filter(segment -> segment.statistics().adjustedPValue().isPresent())
            .toList();
    if (tested.isEmpty()) {
      return "No segment could be tested for a hot spot. ";
    }
    long flagged = tested.stream().filter(segment -> segment.statistics().hotSpot()).count();
    Optional<RankedSegment> highest =
        tested.stream()
            .max(
                Comparator.<RankedSegment>comparingDouble(
                        segment -> segment.statistics().giStar().orElse(Double.NEGATIVE_INFINITY))
                    .thenComparing(segment -> segment.segment().id(), Ids.ORDER.reversed()));
    return Figures.count(flagged)
        + " of "
        + Figures.count(tested.size(), "segment", "segments")
        + " tested "
        + (flagged == 1 ? "is a hot spot" : "are hot spots")
        + ", at a false discovery rate of "
        + Figures.chosenPercent(parameters.ranking().falseDiscoveryRate())
        + "; the highest Gi* is that of "
        + highest.map(segment -> SegmentLabel.of(segment.segment())).orElseThrow()
        + ". "
        + HotSpotFinder.CAUTION
        + " ";
  }

  private String wantOfData() {
    List<String> doubtful =
        leading.stream()
            .filter(segment -> score(segment).highForWantOfData())
            .map(segment -> SegmentLabel.of(segment.segment()))
            .toList();
    if (doubtful.isEmpty()) {
      return "";
    }
    return "High only for want of data (ten others would come before with the missing terms at the"
        + " survey's median): "
        + String.join(", ", doubtful)
        + ". ";
  }

  /** Gaps of the leading segments, each once. */
  private String gaps() {
    Set<String> everywhere = new LinkedHashSet<>(leading.get(0).evidence().dataGaps());
    leading.forEach(segment -> everywhere.retainAll(segment.evidence().dataGaps()));
    long others =
        leading.stream()
            .filter(segment -> !everywhere.containsAll(segment.evidence().dataGaps()))
            .count();
    String text =
        everywhere.isEmpty()
            ? ""
            : "Missing or assumed for all of them: " + String.join("; ", everywhere) + ". ";
    if (others > 0) {
      text +=
          "The column data_gaps names more for "
              + Figures.count(others)
              + " of the first "
              + Figures.count(leading.size())
              + ". ";
    }
    if (leading.stream().anyMatch(segment -> segment.evidence().depth().isPresent())) {
      text += "Depths are those of the depth layer's datum, without the tide. ";
    }
    return text;
  }

  private String attribution() {
    StringBuilder text =
        new StringBuilder("Of ")
            .append(Figures.length(ranking.scarLengthMetres()))
            .append(" of scar line, ")
            .append(Figures.length(ranking.attributedMetres()))
            .append(" belongs to a segment, ")
            .append(Figures.length(ranking.outOfReachMetres()))
            .append(" is out of reach of all");
    if (ranking.blockedMetres() > 0) {
      text.append(", ")
          .append(Figures.length(ranking.blockedMetres()))
          .append(" lies behind a barrier");
    }
    if (ranking.polygonScarCount() > 0) {
      text.append("; ")
          .append(Figures.count(ranking.polygonScarCount(), "scar", "scars"))
          .append(" mapped as ")
          .append(ranking.polygonScarCount() == 1 ? "a polygon has" : "polygons have")
          .append(" no length");
    }
    return text.append('.').toString();
  }

  /** The leading segments as a table. */
  List<String> table(int width) {
    TextTable table =
        new TextTable("segment", "scar m", "bed ha", "m/ha", "score", "top ten", "most by");
    for (RankedSegment segment : leading) {
      table.add(
          segment.rank().getAsInt() + ". " + SegmentLabel.of(segment.segment()),
          Figures.number(segment.scarLengthMetres()),
          Figures.number(segment.exposureHectares()),
          Figures.number(segment.ratePerHectare().orElseThrow()),
          Figures.number(score(segment).score()),
          Figures.percent(score(segment).topTenShare()),
          cause(segment.leadingCause()));
    }
    return table.lines(width);
  }

  String belowTable() {
    long unranked = ranking.segments().stream().filter(s -> s.rank().isEmpty()).count();
    return Figures.count(ranking.segments().size(), "segment", "segments")
        + " in all; "
        + Figures.count(unranked)
        + " without a rate, for too little bed within reach. Top ten: share of draws in which the"
        + " segment is among the first ten.";
  }

  private static SegmentScore score(RankedSegment segment) {
    return segment.score().orElseThrow();
  }

  private String cause(String key) {
    ScarCause known = assessed.references().causes().get(key);
    return known == null ? key : known.label().toLowerCase(Locale.ROOT);
  }
}
