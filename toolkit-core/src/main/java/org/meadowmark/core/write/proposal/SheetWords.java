package org.meadowmark.core.write.proposal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Point;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.rank.zone.CoverPoint;
import org.meadowmark.core.rank.zone.DeviceProposal;
import org.meadowmark.core.rank.zone.Marker;
import org.meadowmark.core.rank.zone.SlowPassage;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.rank.zone.ZoneWorth;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.write.Figures;

/** Puts the numbers of a zone into words. */
final class SheetWords {
  private static final int DIGEST_DIGITS = 8;
  private static final int DECIMALS_OF_MINUTES = 3;
  private static final String ANY_PATTERN = "any";

  private final MapLayers layers;
  private final ZoneSheet sheet;
  private final Zone zone;
  private final ZonePlan plan;
  private final SheetText text;

  SheetWords(MapLayers layers, ZoneSheet sheet, SheetText text) {
    this.layers = layers;
    this.sheet = sheet;
    this.zone = sheet.zone();
    this.plan = sheet.plan();
    this.text = text;
  }

  SheetView view(MapDrawing map, String css) {
    String length = Figures.length(zone.lengthMetres());
    return new SheetView(
        text.all(),
        css,
        text.get("title", zone.id(), sheet.channel(), length),
        text.get("description", sheet.channel(), length),
        surveyLine(),
        plan.zones().size() > 1
            ? text.get("planLine", Figures.count(plan.zones().size()))
            : text.get("planLineSingle"),
        figures(),
        devices(),
        map.svg(),
        text.get("mapCaption", zone.id()),
        capped(map),
        evidence(),
        markersCaption(),
        zone.markers().stream().map(this::position).toList(),
        worth(),
        zone.worth().passages().stream().map(this::passage).toList(),
        orElse(zone.worth().answers(), "noAnswers"),
        method(),
        choice(),
        orElse(sheet.uncertainty(), "noUncertainty"),
        gaps(),
        cautions(),
        inputs(),
        text.get("seed", Long.toString(sheet.survey().seed()), sheet.survey().toolVersion()));
  }

  private String surveyLine() {
    String name = sheet.survey().name();
    return sheet
        .survey()
        .date()
        .map(date -> text.get("surveyLine", name, date.toString()))
        .orElseGet(() -> text.get("surveyLineUndated", name));
  }

  private List<SheetView.KeyFigure> figures() {
    OptionalDouble longest =
        zone.worth().passages().stream().mapToDouble(SlowPassage::extraMinutes).max();
    double channels = channelMetres();
    return List.of(
        new SheetView.KeyFigure(Figures.length(zone.scarMetres()), text.get("figureScars"), false),
        new SheetView.KeyFigure(
            Figures.percent(zone.coveredShare()), text.get("figureShare"), false),
        figure(
            channels > 0
                ? Optional.of(Figures.percent(zone.lengthMetres() / channels))
                : Optional.empty(),
            "figureChannel"),
        figure(
            longest.isPresent() ? Optional.of(minutes(longest.getAsDouble())) : Optional.empty(),
            "figureTime"));
  }

  private SheetView.KeyFigure figure(Optional<String> value, String label) {
    return new SheetView.KeyFigure(
        value.orElseGet(() -> text.get("missing")), text.get(label), value.isEmpty());
  }

  /** Ground length of every channel line. */
  private double channelMetres() {
    MetricSurvey survey = sheet.survey().map();
    double metres = 0;
    for (Channel channel : survey.channels()) {
      Point middle = channel.geometry().getCentroid();
      metres +=
          channel.geometry().getLength()
              / survey.scale().lengthFactor(middle.getX(), middle.getY());
    }
    return metres;
  }

  private List<SheetView.Device> devices() {
    List<SheetView.Device> devices = new ArrayList<>();
    Set<String> causesWithAMark = new HashSet<>();
    for (DeviceProposal proposal : zone.devices()) {
      // One cause needs one regulatory mark; a second rule for it is another way, not a second
      // mark.
      boolean isAlternative =
          proposal.shape().isRegulatory() && !causesWithAMark.add(proposal.cause());
      String share = Figures.percent(proposal.share());
      String cause = causeLabel(proposal.cause());
      boolean anyPattern = proposal.pattern().isEmpty() || proposal.pattern().equals(ANY_PATTERN);
      devices.add(
          new SheetView.Device(
              MarkDrawing.buoy(
                  proposal.shape(), zone.id() + "-device-" + (devices.size() + 1), text),
              isAlternative
                  ? text.get("deviceInstead", proposal.device())
                  : sentence(proposal.device()),
              anyPattern
                  ? text.get("deviceShare", share, cause)
                  : text.get("deviceSharePattern", share, cause, proposal.pattern()),
              ended(sentence(proposal.reason())),
              legal(proposal),
              proposal.legalBasis().equals(DeviceProposal.LEGAL_BASIS_MISSING),
              proposal.source()));
    }
    return devices;
  }

  private String legal(DeviceProposal proposal) {
    return switch (proposal.legalBasis()) {
      case DeviceProposal.LEGAL_BASIS_MISSING -> text.get("legalMissing");
      case DeviceProposal.LEGAL_BASIS_NOT_NEEDED -> text.get("legalNotNeeded");
      default -> proposal.legalBasis();
    };
  }

  private String causeLabel(String key) {
    ScarCause cause = sheet.survey().references().causes().get(key);
    return cause == null ? key : cause.label();
  }

  private List<String> capped(MapDrawing map) {
    return map.scarsDrawn() == map.scarsInView()
        ? List.of()
        : List.of(
            text.get(
                "mapCapped", Figures.count(map.scarsDrawn()), Figures.count(map.scarsInView())));
  }

  private List<SheetView.Evidence> evidence() {
    return sheet.evidence().stream()
        .map(
            row ->
                new SheetView.Evidence(
                    row.label(),
                    row.value().orElseGet(() -> text.get("missing")),
                    row.unit(),
                    row.note(),
                    row.isMissing()))
        .toList();
  }

  private String markersCaption() {
    String grid = sheet.survey().map().gridLabel();
    return layers
        .gridPlaces()
        .map(places -> text.get("markersCaption", places.datum(), grid))
        .orElseGet(() -> text.get("markersCaptionGrid", grid));
  }

  private SheetView.Position position(Marker marker) {
    Point point = marker.geometry();
    Optional<GridPlaces.Degrees> degrees =
        layers.gridPlaces().map(places -> places.at(point.getX(), point.getY()));
    String why =
        Stream.of(marker.reason(), marker.placement())
            .filter(words -> !words.isEmpty())
            .collect(Collectors.joining("; "));
    return new SheetView.Position(
        marker.id(),
        degrees
            .map(d -> DegreesMinutes.latitude(d.latitude(), DECIMALS_OF_MINUTES))
            .orElseGet(() -> text.get("notKnown")),
        degrees
            .map(d -> DegreesMinutes.longitude(d.longitude(), DECIMALS_OF_MINUTES))
            .orElseGet(() -> text.get("notKnown")),
        Figures.count(Math.round(point.getX())),
        Figures.count(Math.round(point.getY())),
        DegreesMinutes.bearing(marker.bearingDegrees()),
        why);
  }

  private List<String> worth() {
    ZoneWorth worth = zone.worth();
    List<String> sentences = new ArrayList<>();
    sentences.add(
        text.get(
            "worthScars",
            Figures.length(worth.scarMetresPerSeason()),
            Figures.area(worth.scarredHectares() * Hectare.SQUARE_METRES)));
    sentences.add((service(worth) + " " + ended(worth.serviceBasis())).strip());
    return sentences;
  }

  private String service(ZoneWorth worth) {
    if (worth.serviceHectareYears().isEmpty()) {
      return text.get("worthServiceMissing");
    }
    String middle = Figures.number(worth.serviceHectareYears().getAsDouble());
    if (worth.lowServiceHectareYears().isEmpty() || worth.highServiceHectareYears().isEmpty()) {
      return text.get("worthService", middle);
    }
    return text.get(
        "worthServiceRange",
        middle,
        Figures.number(worth.lowServiceHectareYears().getAsDouble()),
        Figures.number(worth.highServiceHectareYears().getAsDouble()));
  }

  private SheetView.Passage passage(SlowPassage passage) {
    return new SheetView.Passage(
        speed(passage.usualKilometresPerHour(), passage.usualKnots()),
        speed(passage.slowKilometresPerHour(), passage.slowKnots()),
        minutes(passage.extraMinutes()));
  }

  private String speed(double kilometresPerHour, double knots) {
    return text.get("speed", oneDecimal(kilometresPerHour), oneDecimal(knots));
  }

  /** Speeds and times are stated ones: no more decimals than they have. */
  private static String oneDecimal(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private String minutes(double minutes) {
    return text.get("minutes", oneDecimal(minutes));
  }

  private String method() {
    return String.join(" ", text.get("method1"), text.get("method2"), ended(plan.method()));
  }

  private String choice() {
    CoverPoint best = plan.best();
    String used = Figures.length(best.usedMetres());
    String covered = Figures.length(best.coveredMetres());
    String most =
        plan.mostZones() == 1
            ? text.get("zonesCountOne")
            : text.get("zonesCount", Figures.count(plan.mostZones()));
    String limits = text.get("limits", most, Figures.length(plan.totalLengthMetres()));
    String choice =
        best.isProvenBest()
            ? text.get("choiceProven", used, covered)
            : text.get("choiceBounded", used, covered, Figures.length(best.upperBoundMetres()));
    return String.join(
        " ", limits, choice, text.get("choiceWorst", Figures.length(best.worstFirstMetres())));
  }

  private List<String> gaps() {
    List<String> gaps =
        new ArrayList<>(zone.dataGaps().stream().map(SheetWords::sentence).toList());
    String missing =
        sheet.evidence().stream()
            .filter(EvidenceRow::isMissing)
            .map(EvidenceRow::label)
            .collect(Collectors.joining("; "));
    if (!missing.isEmpty()) {
      gaps.add(text.get("gapsEvidence", missing));
    }
    return orElse(gaps, "noGaps");
  }

  /** The permits stand on every sheet, also where a plan says nothing of them. */
  private List<String> cautions() {
    List<String> cautions =
        new ArrayList<>(
            plan.cautions().isEmpty() ? List.of(text.get("cautionPermits")) : plan.cautions());
    cautions.add(text.get("cautionSea"));
    return cautions;
  }

  private String inputs() {
    List<SheetInput> inputs = sheet.survey().inputs();
    if (inputs.isEmpty()) {
      return text.get("inputsNone");
    }
    return text.get(
        "inputs",
        inputs.stream()
            .sorted(Comparator.comparing(SheetInput::name).thenComparing(SheetInput::sha256))
            .map(input -> input.name() + Figures.UNIT_SPACE + "(" + start(input.sha256()) + ")")
            .collect(Collectors.joining(", ")));
  }

  private static String start(String digest) {
    return digest.substring(0, Math.min(DIGEST_DIGITS, digest.length()));
  }

  private List<String> orElse(List<String> lines, String key) {
    return lines.isEmpty() ? List.of(text.get(key)) : lines;
  }

  /** The text with a full stop at its end, if it has any text. */
  private static String ended(String words) {
    return words.isEmpty() || words.endsWith(".") ? words : words + ".";
  }

  /** The text with a capital letter at its start. */
  private static String sentence(String words) {
    if (words.isEmpty()) {
      return words;
    }
    int first = words.codePointAt(0);
    return Character.toString(Character.toUpperCase(first))
        + words.substring(Character.charCount(first));
  }
}
