package org.meadowmark.core.write.report;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.evidence.ScarPattern;
import org.meadowmark.core.rank.zone.Marker;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Phrases;
import org.meadowmark.core.write.report.MapLayer.Form;
import org.meadowmark.core.write.report.MapLayer.StyleClass;

/** Layers along channels: segments by rank, proposed zones, their marks. */
final class ChannelLayers {
  private static final int FIRST = 10;
  private static final int NEXT = 50;
  private static final double PERCENT = 100;

  private final AssessedSurvey assessed;
  private final LayerWords words;
  private final Phrases text;
  private final int most;

  ChannelLayers(AssessedSurvey assessed, LayerWords words, int most) {
    this.assessed = assessed;
    this.words = words;
    this.text = words.text();
    this.most = most;
  }

  MapLayer segments() {
    List<StyleClass> classes =
        List.of(
            new StyleClass(text.get("class.segmentFirst"), "segment-first"),
            new StyleClass(text.get("class.segmentNext"), "segment-next"),
            new StyleClass(text.get("class.segmentRest"), "segment-rest"),
            new StyleClass(text.get("class.segmentNone"), "segment-none"));
    return MapLayer.of("segments", Form.LINE, assessed.ranking().segments(), most)
        .text(text.get("col.segment"), row -> row.segment().id())
        .text(text.get("col.channel"), row -> row.segment().channel())
        .optionalCount(text.get("col.rank"), row -> optional(row.rank()))
        .optional(
            text.get("col.score"),
            "",
            row ->
                row.score().isPresent()
                    ? OptionalDouble.of(row.score().get().score())
                    : OptionalDouble.empty())
        .number(text.get("col.scarLength"), "m", RankedSegment::scarLengthMetres)
        .number(text.get("col.exposure"), "ha", RankedSegment::exposureHectares)
        .optional(text.get("col.rate"), "m/ha", RankedSegment::ratePerHectare)
        .optional(text.get("col.rateLow"), "m/ha", row -> row.statistics().rate().low())
        .optional(text.get("col.rateHigh"), "m/ha", row -> row.statistics().rate().high())
        .optional(
            text.get("col.topTen"),
            "%",
            row ->
                row.score().isPresent()
                    ? LayerWords.percent(row.score().get().topTenShare())
                    : OptionalDouble.empty())
        .text(text.get("col.leadingCause"), row -> words.cause(row.leadingCause()))
        .text(
            text.get("col.pattern"),
            row ->
                row.evidence().pattern() == ScarPattern.NONE ? "" : row.evidence().pattern().key())
        .text(text.get("col.hotSpot"), row -> row.statistics().hotSpot() ? text.get("yes") : "")
        .build(row -> row.segment().geometry(), classes, ChannelLayers::rankClass);
  }

  private static int rankClass(RankedSegment row) {
    if (row.rank().isEmpty()) {
      return 3;
    }
    int rank = row.rank().getAsInt();
    if (rank > NEXT || row.scarLengthMetres() <= 0) {
      return 2;
    }
    return rank > FIRST ? 1 : 0;
  }

  MapLayer zones() {
    Map<String, String> channels = channelOfSegment();
    return MapLayer.of("zones", Form.LINE, assessed.zones().zones(), most)
        .text(text.get("col.zone"), Zone::id)
        .text(
            text.get("col.channel"),
            row ->
                row.segmentIds().stream()
                    .map(channels::get)
                    .distinct()
                    .collect(Collectors.joining(", ")))
        .number(text.get("col.length"), "m", Zone::lengthMetres)
        .number(text.get("col.scarLength"), "m", Zone::scarMetres)
        .number(text.get("col.covered"), "%", row -> PERCENT * row.coveredShare())
        .text(
            text.get("col.device"),
            row -> row.devices().stream().limit(1).map(d -> d.device()).findFirst().orElse(""))
        .count(text.get("col.marks"), row -> row.markers().size())
        .text(text.get("col.missing"), row -> String.join("; ", row.dataGaps()))
        .build(Zone::geometry, text.get("class.zone"), "zone");
  }

  private Map<String, String> channelOfSegment() {
    return assessed.ranking().segments().stream()
        .map(RankedSegment::segment)
        .collect(Collectors.toMap(s -> s.id(), s -> s.channel()));
  }

  MapLayer marks() {
    List<Marker> rows =
        assessed.zones().zones().stream().flatMap(zone -> zone.markers().stream()).toList();
    List<String> shapes =
        rows.stream().map(mark -> mark.shape().key()).distinct().sorted().toList();
    List<StyleClass> classes =
        shapes.stream()
            .map(shape -> new StyleClass(text.get("mark." + shape), "mark-" + shape))
            .toList();
    return MapLayer.of("marks", Form.POINT, rows, most)
        .text(text.get("col.mark"), Marker::id)
        .text(text.get("col.zone"), Marker::zoneId)
        .text(text.get("col.device"), Marker::device)
        .text(text.get("col.why"), Marker::reason)
        .text(text.get("col.placement"), Marker::placement)
        .number(text.get("col.faces"), "°", Marker::bearingDegrees)
        .build(Marker::geometry, classes, row -> shapes.indexOf(row.shape().key()));
  }

  private static Long optional(OptionalInt value) {
    return value.isPresent() ? (long) value.getAsInt() : null;
  }
}
