package org.meadowmark.core.write.proposal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.evidence.ScarPattern;
import org.meadowmark.core.rank.score.SegmentScore;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.write.Figures;

/**
 * The evidence of a zone from that of its segments: sums of lengths, means weighted by scar length,
 * and the highest of what cannot be averaged, named as such. What no segment knows is missing.
 */
final class ZoneEvidence {
  private final Zone zone;
  private final List<RankedSegment> segments;
  private final ReferenceTables references;
  private final SheetText text;

  /** A mean over the segments that know a value. */
  private record Mean(double value, double knownShare) {}

  ZoneEvidence(
      Zone zone, List<RankedSegment> segments, ReferenceTables references, SheetText text) {
    this.zone = zone;
    this.segments = segments;
    this.references = references;
    this.text = text;
  }

  List<EvidenceRow> rows() {
    List<EvidenceRow> rows = new ArrayList<>();
    rows.add(
        EvidenceRow.of(
            text.get("evidenceLength"),
            Figures.number(zone.scarMetres()),
            "m",
            text.get("evidenceLengthNote", Figures.count(segments.size()))));
    rows.add(cause());
    rows.add(rate());
    rows.add(shrunkenRate());
    rows.add(hotSpot());
    rows.add(share("evidenceEdge", s -> s.evidence().edge().map(edge -> edge.lengthShare())));
    rows.add(angle());
    rows.add(pattern());
    rows.add(depth());
    rows.add(severity());
    rows.add(connectivity());
    rows.add(share("evidenceReScarred", s -> optional(s.evidence().reScarredShare())));
    rows.add(score());
    return rows;
  }

  /** How steady the zone is, and what is high only for want of data. */
  List<String> uncertainty() {
    List<String> sentences = new ArrayList<>();
    leading()
        .ifPresent(
            best -> {
              SegmentScore score = best.score().orElseThrow();
              score
                  .topTenShare()
                  .ifPresent(
                      share ->
                          sentences.add(
                              text.get(
                                  "uncertainTopTen", best.segment().id(), Figures.percent(share))));
            });
    List<String> doubtful =
        segments.stream()
            .filter(s -> s.score().map(SegmentScore::highForWantOfData).orElse(false))
            .map(s -> s.segment().id())
            .toList();
    if (!doubtful.isEmpty()) {
      sentences.add(text.get("uncertainWantOfData", String.join(", ", doubtful)));
    }
    if (segments.stream().anyMatch(s -> s.statistics().rate().collapsed())) {
      sentences.add(text.get("uncertainCollapsed"));
    }
    sentences.add(text.get("uncertainMapping"));
    return sentences;
  }

  private EvidenceRow cause() {
    Optional<Map.Entry<String, Double>> most =
        zone.scarMetresByCause().entrySet().stream()
            .max(
                Map.Entry.<String, Double>comparingByValue()
                    .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())));
    if (most.isEmpty() || !(zone.scarMetres() > 0)) {
      return missing("evidenceCause", "noScars");
    }
    ScarCause cause = references.causes().get(most.get().getKey());
    return EvidenceRow.of(
        text.get("evidenceCause"),
        cause == null ? most.get().getKey() : cause.label(),
        "",
        text.get("evidenceCauseNote", Figures.percent(most.get().getValue() / zone.scarMetres())));
  }

  private EvidenceRow rate() {
    Optional<RankedSegment> highest = highest(s -> s.ratePerHectare());
    if (highest.isEmpty()) {
      return missing("evidenceRate", "noRate");
    }
    return EvidenceRow.of(
        text.get("evidenceRate"),
        Figures.number(highest.get().ratePerHectare().getAsDouble()),
        "m/ha",
        text.get(
            "evidenceRateNote",
            highest.get().segment().id(),
            Figures.number(highest.get().exposureHectares())));
  }

  private EvidenceRow shrunkenRate() {
    Optional<RankedSegment> highest = highest(s -> s.statistics().rate().estimate());
    if (highest.isEmpty()) {
      return missing("evidenceShrunken", "noRate");
    }
    var rate = highest.get().statistics().rate();
    return EvidenceRow.of(
        text.get("evidenceShrunken"),
        Figures.number(rate.estimate().getAsDouble()),
        "m/ha",
        text.get(
            "evidenceShrunkenNote",
            highest.get().segment().id(),
            number(rate.low()),
            number(rate.high())));
  }

  private EvidenceRow hotSpot() {
    Optional<RankedSegment> lowest =
        segments.stream()
            .filter(s -> s.statistics().adjustedPValue().isPresent())
            .min(Comparator.comparingDouble(s -> s.statistics().adjustedPValue().getAsDouble()));
    if (lowest.isEmpty()) {
      return missing("evidenceHotSpot", "noTest");
    }
    long hot = segments.stream().filter(s -> s.statistics().hotSpot()).count();
    return EvidenceRow.of(
        text.get("evidenceHotSpot"),
        text.get("evidenceHotSpotValue", Figures.count(hot), Figures.count(segments.size())),
        "",
        text.get(
            "evidenceHotSpotNote",
            Figures.number(lowest.get().statistics().adjustedPValue().getAsDouble()),
            number(lowest.get().statistics().giStar())));
  }

  private EvidenceRow angle() {
    return mean(s -> s.evidence().lie().map(lie -> lie.meanAngleDegrees()))
        .map(
            mean ->
                EvidenceRow.of(
                    text.get("evidenceAngle"),
                    Figures.number(mean.value()),
                    "°",
                    text.get("evidenceAngleNote")))
        .orElseGet(() -> missing("evidenceAngle", "noScars"));
  }

  private EvidenceRow pattern() {
    List<String> patterns =
        segments.stream()
            .map(s -> s.evidence().pattern())
            .filter(pattern -> pattern != ScarPattern.NONE)
            .map(ScarPattern::key)
            .distinct()
            .sorted()
            .toList();
    long count = segments.stream().filter(s -> s.evidence().pattern() != ScarPattern.NONE).count();
    return EvidenceRow.of(
        text.get("evidencePattern"),
        patterns.isEmpty() ? text.get("evidenceNoPattern") : String.join(", ", patterns),
        "",
        text.get("evidencePatternNote", Figures.count(count), Figures.count(segments.size())));
  }

  private EvidenceRow depth() {
    return mean(s -> s.evidence().depth().map(depth -> depth.shallowShare()))
        .map(
            mean ->
                EvidenceRow.of(
                    text.get("evidenceDepth"),
                    Figures.number(100 * mean.value()),
                    "%",
                    text.get("evidenceShareNote", Figures.percent(mean.knownShare()))))
        .orElseGet(() -> missing("evidenceDepth", "noDepth"));
  }

  private EvidenceRow severity() {
    List<String> classes = references.severityClasses().stream().map(SeverityClass::key).toList();
    return segments.stream()
        .map(s -> s.evidence().worstSeverity())
        .filter(classes::contains)
        .max(Comparator.comparingInt(classes::indexOf))
        .map(
            worst ->
                EvidenceRow.of(
                    text.get("evidenceSeverity"),
                    references.severityClasses().get(classes.indexOf(worst)).label(),
                    "",
                    text.get("evidenceSeverityNote")))
        .orElseGet(() -> missing("evidenceSeverity", "noBeds"));
  }

  private EvidenceRow connectivity() {
    double sum = 0;
    int known = 0;
    for (RankedSegment segment : segments) {
      OptionalDouble gain = segment.evidence().connectivityGainHectares();
      if (gain.isPresent()) {
        sum += gain.getAsDouble();
        known++;
      }
    }
    return known == 0
        ? missing("evidenceConnectivity", "notWorkedOut")
        : EvidenceRow.of(
            text.get("evidenceConnectivity"),
            Figures.number(sum),
            "ha",
            text.get(
                "evidenceConnectivityNote", Figures.count(known), Figures.count(segments.size())));
  }

  private EvidenceRow score() {
    return leading()
        .map(
            best ->
                EvidenceRow.of(
                    text.get("evidenceScore"),
                    Figures.number(best.score().orElseThrow().score()),
                    "",
                    text.get(
                        "evidenceScoreNote",
                        best.segment().id(),
                        best.rank().isPresent()
                            ? Figures.count(best.rank().getAsInt())
                            : text.get("notKnown"))))
        .orElseGet(() -> missing("evidenceScore", "noRate"));
  }

  private EvidenceRow share(String key, Function<RankedSegment, Optional<Double>> value) {
    return mean(value)
        .map(
            mean ->
                EvidenceRow.of(
                    text.get(key),
                    Figures.number(100 * mean.value()),
                    "%",
                    text.get("evidenceShareNote", Figures.percent(mean.knownShare()))))
        .orElseGet(() -> missing(key, key + "Missing"));
  }

  private EvidenceRow missing(String key, String why) {
    return EvidenceRow.missing(text.get(key), text.get(why));
  }

  /** Segment with the highest score. */
  private Optional<RankedSegment> leading() {
    return highest(
        s -> s.score().map(x -> OptionalDouble.of(x.score())).orElse(OptionalDouble.empty()));
  }

  private Optional<RankedSegment> highest(Function<RankedSegment, OptionalDouble> value) {
    return segments.stream()
        .filter(s -> value.apply(s).isPresent())
        .reduce((a, b) -> value.apply(b).getAsDouble() > value.apply(a).getAsDouble() ? b : a);
  }

  private Optional<Mean> mean(Function<RankedSegment, Optional<Double>> value) {
    double weight = 0;
    double sum = 0;
    double all = 0;
    for (RankedSegment segment : segments) {
      double metres = segment.scarLengthMetres();
      all += metres;
      Optional<Double> known = value.apply(segment);
      if (known.isPresent()) {
        weight += metres;
        sum += metres * known.get();
      }
    }
    return weight > 0 ? Optional.of(new Mean(sum / weight, weight / all)) : Optional.empty();
  }

  private static Optional<Double> optional(OptionalDouble value) {
    return value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.empty();
  }

  private String number(OptionalDouble value) {
    return value.isPresent() ? Figures.number(value.getAsDouble()) : text.get("notKnown");
  }
}
