package org.meadowmark.core.write.proposal;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.statistics.ShrunkenRate;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;
import org.meadowmark.core.write.SegmentLabel;

/** Puts a whole survey into the words and rows of the hearing paper. */
final class HearingWords {
  private static final int MOST_AREAS = 15;
  private static final int MOST_SEGMENTS = 8;
  private static final int DIGEST_LENGTH = 12;
  private static final String NONE = "–";

  private final AssessedSurvey assessed;
  private final SheetSurvey survey;
  private final SheetText text;

  HearingWords(AssessedSurvey assessed, SheetSurvey survey, SheetText text) {
    this.assessed = assessed;
    this.survey = survey;
    this.text = text;
  }

  HearingView view(List<HearingAnswer> answers, MapDrawing map, String css) {
    List<AreaMeasure> areas = areas();
    List<AreaMeasure> shown = areas.size() <= MOST_AREAS ? areas : areas.subList(0, MOST_AREAS);
    return new HearingView(
        text.all(),
        css,
        text.get("hearingTitle", survey.name()),
        text.get("hearingDescription", survey.name()),
        survey
            .date()
            .map(date -> text.get("surveyLine", survey.name(), date.toString()))
            .orElseGet(() -> text.get("surveyLineUndated", survey.name())),
        answers,
        map.svg(),
        text.get("hearingMapCaption")
            + (map.scarsDrawn() < map.scarsInView()
                ? " "
                    + text.get(
                        "mapCapped",
                        Figures.count(map.scarsDrawn()),
                        Figures.count(map.scarsInView()))
                : ""),
        Stream.concat(
                shown.stream(),
                assessed.measurement().areas().stream()
                    .filter(area -> area.kind() == Kind.WHOLE_SURVEY))
            .map(this::area)
            .toList(),
        shown.size() < areas.size()
            ? List.of(text.get("hearingAreasLeft", Figures.count(areas.size() - shown.size())))
            : List.of(),
        segments(),
        assessed.zones().zones().stream().map(this::zone).toList(),
        List.of(
            text.get("hearingUnseen"),
            text.get("hearingUnknown"),
            text.get("hearingPermits"),
            text.get("cautionSea")),
        survey.inputs().isEmpty()
            ? text.get("inputsNone")
            : text.get(
                "inputs",
                survey.inputs().stream()
                    .map(input -> input.name() + " " + start(input.sha256()))
                    .collect(Collectors.joining(", "))),
        text.get("seed", Long.toString(survey.seed()), survey.toolVersion()));
  }

  private static String start(String digest) {
    return digest.substring(0, Math.min(DIGEST_LENGTH, digest.length()));
  }

  private List<AreaMeasure> areas() {
    return assessed.measurement().areas().stream()
        .filter(area -> area.kind() != Kind.WHOLE_SURVEY)
        .filter(area -> area.damage().grassSquareMetres() > 0)
        .sorted(
            Comparator.comparing(AreaMeasure::kind)
                .thenComparing(area -> area.area().map(each -> each.id()).orElse(""), Ids.ORDER))
        .toList();
  }

  private HearingView.Area area(AreaMeasure area) {
    Damage damage = area.damage();
    boolean surveyed = damage.surveyedSquareMetres() > 0;
    double unknown = Math.max(0, damage.grassSquareMetres() - damage.surveyedSquareMetres());
    return new HearingView.Area(
        area.label(),
        hectares(damage.grassSquareMetres()),
        hectares(unknown),
        surveyed ? hectares(damage.scarredSquareMetres()) : text.get("notKnown"),
        surveyed ? Figures.percent(damage.share()) : text.get("notKnown"),
        surveyed ? severity(damage.severityKey()) : text.get("notKnown"),
        Figures.count(area.fragmentation().before().patchCount())
            + " → "
            + Figures.count(area.fragmentation().after().patchCount()));
  }

  private static String hectares(double squareMetres) {
    return Figures.number(Figures.hectareValue(squareMetres));
  }

  private String severity(String key) {
    return survey.references().severityClasses().stream()
        .filter(each -> each.key().equals(key))
        .map(SeverityClass::label)
        .findFirst()
        .orElse(text.get("notKnown"));
  }

  private List<HearingView.Segment> segments() {
    return assessed.ranking().segments().stream()
        .filter(segment -> segment.rank().isPresent())
        .sorted(
            Comparator.<RankedSegment>comparingInt(segment -> segment.rank().getAsInt())
                .thenComparing(segment -> segment.segment().id(), Ids.ORDER))
        .limit(MOST_SEGMENTS)
        .map(this::segment)
        .toList();
  }

  private HearingView.Segment segment(RankedSegment segment) {
    ShrunkenRate rate = segment.statistics().rate();
    return new HearingView.Segment(
        Integer.toString(segment.rank().getAsInt()),
        SegmentLabel.of(segment.segment()),
        Figures.length(segment.scarLengthMetres()),
        number(segment.ratePerHectare()),
        rate.low().isPresent() && rate.high().isPresent()
            ? text.get(
                "hearingInterval",
                Figures.number(rate.low().getAsDouble()),
                Figures.number(rate.high().getAsDouble()))
            : NONE,
        segment.score().map(each -> Figures.number(each.score())).orElse(NONE));
  }

  private static String number(OptionalDouble value) {
    return value.isPresent() ? Figures.number(value.getAsDouble()) : NONE;
  }

  private HearingView.ZoneRow zone(Zone zone) {
    return new HearingView.ZoneRow(
        zone.id(),
        Figures.length(zone.lengthMetres()),
        Figures.length(zone.scarMetres()),
        Figures.percent(zone.coveredShare()),
        Figures.count(zone.markers().size()));
  }
}
