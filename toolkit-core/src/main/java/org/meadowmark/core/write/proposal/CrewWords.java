package org.meadowmark.core.write.proposal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.meadowmark.core.plan.RepairScar;
import org.meadowmark.core.plan.RepairSeason;
import org.meadowmark.core.write.Figures;

/** Puts a season of the repair plan into words. */
final class CrewWords {
  /** A sheet is for a boat, not for an archive. */
  static final int MOST_VISITS = 400;

  private static final int DECIMALS_OF_MINUTES = 4;

  private final CrewSurvey survey;
  private final RepairSeason season;
  private final Optional<GridPlaces> places;
  private final SheetText text;

  CrewWords(CrewSurvey survey, RepairSeason season, Optional<GridPlaces> places, SheetText text) {
    this.survey = survey;
    this.season = season;
    this.places = places;
    this.text = text;
  }

  CrewView view(String css) {
    String number = Integer.toString(season.number());
    String units = Figures.count(season.units());
    return new CrewView(
        text.all(),
        css,
        text.get("crewTitle", number, Figures.count(season.scars().size()), units),
        text.get("crewDescription", number, units),
        survey
            .date()
            .map(date -> text.get("surveyLine", survey.name(), date.toString()))
            .orElseGet(() -> text.get("surveyLineUndated", survey.name())),
        window(),
        figures(),
        before(),
        text.get(
            "crewWayText",
            Figures.length(season.wayMetres()),
            Figures.length(season.shortestWayMetres()),
            decimals(
                season.shortestWayMetres() > 0
                    ? season.wayMetres() / season.shortestWayMetres()
                    : 1,
                2)),
        places
            .map(known -> text.get("crewCaption", known.datum()))
            .orElseGet(() -> text.get("crewCaptionGrid", survey.gridLabel())),
        visits(),
        season.scars().size() > MOST_VISITS
            ? List.of(
                text.get(
                    "crewCapped", Figures.count(MOST_VISITS), Figures.count(season.scars().size())))
            : List.of(),
        List.of(
            text.get("crewTide"),
            text.get("crewBoat"),
            text.get("crewDive"),
            text.get("crewWeather")),
        Stream.concat(survey.plan().gaps().stream(), survey.plan().assumptions().stream())
            .toList());
  }

  private String window() {
    if (season.from().isPresent() && season.to().isPresent()) {
      return text.get("crewWindow", season.from().get().toString(), season.to().get().toString());
    }
    return text.get(
        "crewWindowUndated",
        Integer.toString(survey.choices().firstMonth()),
        Integer.toString(survey.choices().lastMonth()));
  }

  private List<SheetView.KeyFigure> figures() {
    boolean placeholder = !survey.choices().placeholders().names().isEmpty();
    return List.of(
        new SheetView.KeyFigure(Figures.count(season.units()), text.get("crewFigureUnits"), false),
        new SheetView.KeyFigure(
            Figures.count(season.scars().size()),
            text.get("crewFigureScars", Figures.count(season.siteCount())),
            false),
        new SheetView.KeyFigure(
            decimals(season.fillCubicMetres(), 1), text.get("crewFigureFill"), false),
        new SheetView.KeyFigure(
            Figures.number(season.cost()),
            text.get(placeholder ? "crewFigureCostPlaceholder" : "crewFigureCost"),
            placeholder));
  }

  private List<String> before() {
    String threshold = decimals(survey.choices().fillThresholdMetres(), 2);
    List<String> lines = new ArrayList<>();
    lines.add(text.get("crewMuck"));
    long unknown = season.scars().stream().filter(scar -> scar.fillCubicMetres().isEmpty()).count();
    if (unknown > 0) {
      lines.add(text.get("crewFillUnknown", Figures.count(unknown), threshold));
    }
    if (season.fillCubicMetres() > 0) {
      lines.add(text.get("crewFillKnown", threshold));
    }
    lines.add(text.get("crewGrazed"));
    lines.add(text.get("crewPermits"));
    return lines;
  }

  private List<CrewView.Visit> visits() {
    List<CrewView.Visit> visits = new ArrayList<>();
    for (RepairScar scar :
        season.scars().subList(0, Math.min(MOST_VISITS, season.scars().size()))) {
      visits.add(visit(visits.size() + 1, scar));
    }
    return visits;
  }

  private CrewView.Visit visit(int number, RepairScar scar) {
    Coordinate middle = scar.measure().scar().geometry().getEnvelopeInternal().centre();
    Optional<GridPlaces.Degrees> degrees = places.map(known -> known.at(middle.x, middle.y));
    return new CrewView.Visit(
        Integer.toString(number),
        scar.scarId(),
        scar.siteId(),
        degrees
            .map(d -> DegreesMinutes.latitude(d.latitude(), DECIMALS_OF_MINUTES))
            .orElseGet(() -> decimals(middle.y, 1)),
        degrees
            .map(d -> DegreesMinutes.longitude(d.longitude(), DECIMALS_OF_MINUTES))
            .orElseGet(() -> decimals(middle.x, 1)),
        scar.measure().scar().isLine() ? decimals(scar.measure().lengthInBedsMetres(), 1) : "–",
        Figures.count(scar.units()),
        scar.rows() > 0 ? Integer.toString(scar.rows()) : "–",
        known(scar.fillCubicMetres(), 1),
        scar.fillCubicMetres().isEmpty(),
        known(scar.excavationMetres(), 2),
        known(scar.measure().depthMetres(), 1),
        scar.measure().depthMetres().isEmpty());
  }

  private String known(OptionalDouble value, int decimals) {
    return value.isPresent() ? decimals(value.getAsDouble(), decimals) : text.get("crewUnknown");
  }

  private static String decimals(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
  }
}
