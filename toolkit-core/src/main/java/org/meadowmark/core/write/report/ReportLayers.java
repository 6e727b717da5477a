package org.meadowmark.core.write.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.BedMeasure;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.measure.Gap;
import org.meadowmark.core.measure.Patch;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.plan.Fitness;
import org.meadowmark.core.plan.RepairPlan;
import org.meadowmark.core.plan.RepairScar;
import org.meadowmark.core.plan.RepairSeason;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.evidence.ScarPattern;
import org.meadowmark.core.rank.zone.Marker;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.reference.Species;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;
import org.meadowmark.core.write.Phrases;
import org.meadowmark.core.write.report.MapLayer.Form;
import org.meadowmark.core.write.report.MapLayer.StyleClass;

/** Makes the layers of the map, those below first; within a layer what matters most comes first. */
final class ReportLayers {
  /** Features of a layer beyond this are left out of the page, and counted. */
  static final int MOST_FEATURES = 100_000;

  /** Scars shown as worth planting where no budget chooses. */
  static final int MOST_CANDIDATES = 50;

  private static final int FIRST = 10;
  private static final int NEXT = 50;
  private static final double PERCENT = 100;

  private final AssessedSurvey assessed;
  private final Phrases text;
  private final int most;
  private final Map<String, Integer> severityPlace = new HashMap<>();
  private final Map<String, Integer> causePlace = new HashMap<>();

  ReportLayers(AssessedSurvey assessed, Phrases text, int most) {
    this.assessed = assessed;
    this.text = text;
    this.most = most;
    ReferenceTables references = assessed.references();
    references
        .severityClasses()
        .forEach(each -> severityPlace.put(each.key(), severityPlace.size()));
    references.causes().keySet().forEach(key -> causePlace.put(key, causePlace.size()));
  }

  /** The layers, those to draw first first. */
  List<MapLayer> all() {
    return List.of(
        land(),
        surveyed(),
        beds(),
        areas(),
        patches(),
        zones(),
        segments(),
        gaps(),
        scars(),
        repairs(),
        marks());
  }

  private MapLayer land() {
    return MapLayer.of("land", Form.AREA, assessed.survey().barriers(), most)
        .build(MapArea::geometry, text.get("class.land"), "land");
  }

  private MapLayer surveyed() {
    return MapLayer.of("surveyed", Form.OUTLINE, assessed.survey().surveyedArea(), most)
        .build(MapArea::geometry, text.get("class.surveyed"), "surveyed");
  }

  private MapLayer beds() {
    List<BedMeasure> rows =
        assessed.measurement().beds().stream()
            .sorted(
                Comparator.comparingDouble((BedMeasure bed) -> -bed.damage().share().orElse(-1))
                    .thenComparing(bed -> bed.bed().id(), Ids.ORDER))
            .toList();
    List<StyleClass> classes = new ArrayList<>();
    List<SeverityClass> severities = assessed.references().severityClasses();
    for (SeverityClass severity : severities) {
      classes.add(
          new StyleClass(
              severity.label() + " (" + SeverityLimits.of(severity) + ")",
              ReportPalette.bedStyle(classes.size(), severities.size())));
    }
    classes.add(new StyleClass(text.get("class.bedUnknown"), "bed-unknown"));
    MapLayer.Builder<BedMeasure> layer =
        MapLayer.of("beds", Form.AREA, rows, most)
            .text(text.get("col.bed"), row -> row.bed().id())
            .text(text.get("col.species"), row -> species(row.bed().species()))
            .text(text.get("col.severity"), row -> severity(row.damage().severityKey()));
    damage(layer, BedMeasure::damage);
    return layer
        .optional(text.get("col.shareLow"), "%", row -> low(row.damage()))
        .optional(text.get("col.shareHigh"), "%", row -> high(row.damage()))
        .count(text.get("col.patchesBefore"), row -> row.fragmentation().before().patchCount())
        .count(text.get("col.patchesAfter"), row -> row.fragmentation().after().patchCount())
        .build(
            row -> row.bed().geometry(),
            classes,
            row -> severityPlace.getOrDefault(row.damage().severityKey(), severities.size()));
  }

  private <T> void damage(MapLayer.Builder<T> layer, Function<T, Damage> damage) {
    layer
        .number(
            text.get("col.grass"),
            "ha",
            row -> Figures.hectareValue(damage.apply(row).grassSquareMetres()))
        .number(
            text.get("col.surveyed"),
            "ha",
            row -> Figures.hectareValue(damage.apply(row).surveyedSquareMetres()))
        .count(text.get("col.scars"), row -> damage.apply(row).scarCount())
        .optional(
            text.get("col.scarred"),
            "m²",
            row ->
                known(
                    damage.apply(row).surveyedSquareMetres() > 0,
                    damage.apply(row).scarredSquareMetres()))
        .optional(text.get("col.share"), "%", row -> percent(damage.apply(row).share()));
  }

  private MapLayer areas() {
    List<AreaMeasure> rows =
        assessed.measurement().areas().stream()
            .filter(area -> area.kind() == Kind.MANAGEMENT_AREA)
            .sorted(Comparator.comparing(area -> area.area().orElseThrow().id(), Ids.ORDER))
            .toList();
    MapLayer.Builder<AreaMeasure> layer =
        MapLayer.of("areas", Form.OUTLINE, rows, most)
            .text(text.get("col.area"), AreaMeasure::label)
            .text(text.get("col.severity"), row -> severity(row.damage().severityKey()));
    damage(layer, AreaMeasure::damage);
    return layer
        .count(text.get("col.patchesBefore"), row -> row.fragmentation().before().patchCount())
        .count(text.get("col.patchesAfter"), row -> row.fragmentation().after().patchCount())
        .optional(
            text.get("col.mesh"),
            "ha",
            row ->
                row.fragmentation().after().mesh().squareMetres().isPresent()
                    ? OptionalDouble.of(
                        Figures.hectareValue(
                            row.fragmentation().after().mesh().squareMetres().getAsDouble()))
                    : OptionalDouble.empty())
        .build(row -> row.area().orElseThrow().geometry(), text.get("class.area"), "area");
  }

  private MapLayer patches() {
    List<Patch> rows =
        assessed.measurement().patches().stream()
            .sorted(
                Comparator.comparingDouble((Patch patch) -> -patch.areaSquareMetres())
                    .thenComparing(Patch::id, Ids.ORDER))
            .toList();
    return MapLayer.of("patches", Form.OUTLINE, rows, most)
        .hidden()
        .text(text.get("col.patch"), Patch::id)
        .number(text.get("col.size"), "m²", Patch::areaSquareMetres)
        .number(text.get("col.perimeter"), "m", Patch::perimeterMetres)
        .text(text.get("col.nearestPatch"), row -> row.nearestPatchId().orElse(""))
        .optional(text.get("col.nearestDistance"), "m", Patch::nearestDistanceMetres)
        .text(text.get("col.group"), Patch::groupId)
        .build(Patch::geometry, text.get("class.patch"), "patch");
  }

  private MapLayer zones() {
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

  private MapLayer segments() {
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
                    ? percent(row.score().get().topTenShare())
                    : OptionalDouble.empty())
        .text(text.get("col.leadingCause"), row -> cause(row.leadingCause()))
        .text(
            text.get("col.pattern"),
            row ->
                row.evidence().pattern() == ScarPattern.NONE ? "" : row.evidence().pattern().key())
        .text(text.get("col.hotSpot"), row -> row.statistics().hotSpot() ? text.get("yes") : "")
        .build(row -> row.segment().geometry(), classes, ReportLayers::rankClass);
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

  private MapLayer gaps() {
    List<Gap> rows =
        assessed.measurement().gaps().stream()
            .sorted(
                Comparator.comparingDouble((Gap gap) -> -gap.lengthMetres())
                    .thenComparing(Gap::scarId, Ids.ORDER)
                    .thenComparing(Gap::id, Ids.ORDER))
            .toList();
    return MapLayer.of("gaps", Form.LINE, rows, most)
        .hidden()
        .text(text.get("col.gap"), Gap::id)
        .text(text.get("col.scar"), Gap::scarId)
        .text(text.get("col.between"), row -> row.firstPatchId() + " – " + row.secondPatchId())
        .number(text.get("col.length"), "m", Gap::lengthMetres)
        .number(text.get("col.leastWidth"), "m", Gap::minimumWidthMetres)
        .optional(text.get("col.meanWidth"), "m", Gap::meanWidthMetres)
        .build(Gap::geometry, text.get("class.gap"), "gap");
  }

  private MapLayer scars() {
    List<ScarMeasure> rows =
        assessed.measurement().scars().stream()
            .sorted(
                Comparator.comparingInt((ScarMeasure scar) -> -scar.gapCount())
                    .thenComparingDouble(scar -> -scar.footprintInBedsSquareMetres())
                    .thenComparing(scar -> scar.scar().id(), Ids.ORDER))
            .toList();
    List<StyleClass> classes = new ArrayList<>();
    for (ScarCause cause : assessed.references().causes().values()) {
      classes.add(new StyleClass(cause.label(), ReportPalette.scarStyle(classes.size())));
    }
    int other = classes.size();
    if (rows.stream().anyMatch(row -> !causePlace.containsKey(row.scar().cause()))) {
      classes.add(new StyleClass(text.get("class.otherCause"), ReportPalette.scarStyle(other)));
    }
    Map<String, RepairScar> repairs = new HashMap<>();
    assessed.repairs().scars().forEach(repair -> repairs.put(repair.scarId(), repair));
    return MapLayer.of("scars", Form.LINE, rows, most)
        .text(text.get("col.scar"), row -> row.scar().id())
        .text(text.get("col.cause"), row -> cause(row.scar().cause()))
        .optional(
            text.get("col.width"), "m", row -> known(row.scar().isLine(), row.scar().widthMetres()))
        .optional(
            text.get("col.length"), "m", row -> known(row.scar().isLine(), row.lengthMetres()))
        .number(text.get("col.inBeds"), "m²", ScarMeasure::footprintInBedsSquareMetres)
        .count(text.get("col.gaps"), ScarMeasure::gapCount)
        .optional(text.get("col.depth"), "m", ScarMeasure::depthMetres)
        .text(
            text.get("col.mappedOn"), row -> row.scar().date().map(LocalDate::toString).orElse(""))
        .text(
            text.get("col.fitness"),
            row ->
                Optional.ofNullable(repairs.get(row.scar().id()))
                    .map(repair -> repair.fitness().key())
                    .orElse(""))
        .build(
            row -> row.scar().geometry(),
            classes,
            row -> causePlace.getOrDefault(row.scar().cause(), other));
  }

  /** A scar to plant; season and visit are 0 where no budget chooses. */
  private record Site(RepairScar scar, int season, int visit) {}

  private MapLayer repairs() {
    RepairPlan plan = assessed.repairs();
    List<Site> rows = new ArrayList<>();
    for (RepairSeason season : plan.seasons()) {
      for (int i = 0; i < season.scars().size(); i++) {
        rows.add(new Site(season.scars().get(i), season.number(), i + 1));
      }
    }
    boolean planned = !rows.isEmpty();
    if (!planned && plan.choice().isEmpty()) {
      candidates(plan).forEach(scar -> rows.add(new Site(scar, 0, 0)));
    }
    MapLayer.Builder<Site> layer =
        MapLayer.of("repairs", Form.LINE, rows, most)
            .text(text.get("col.scar"), row -> row.scar().scarId());
    if (planned) {
      layer.count(text.get("col.season"), Site::season).count(text.get("col.visit"), Site::visit);
    }
    return layer
        .text(text.get("col.site"), row -> row.scar().siteId())
        .count(text.get("col.units"), row -> row.scar().units())
        .number(text.get("col.cost"), "", row -> row.scar().cost().total())
        .optional(
            text.get("col.gain"),
            "ha·year",
            row ->
                row.scar().gain().isPresent()
                    ? OptionalDouble.of(row.scar().gain().get().middle())
                    : OptionalDouble.empty())
        .number(text.get("col.benefit"), "", row -> row.scar().benefit())
        .optional(text.get("col.again"), "%", row -> percent(row.scar().risk().chancePerYear()))
        .text(text.get("col.unknown"), row -> String.join("; ", row.scar().unknowns()))
        .build(
            row -> row.scar().measure().scar().geometry(),
            text.get(planned ? "class.repair" : "class.candidate"),
            "repair");
  }

  /** Scars that can be planted, best benefit for cost first. */
  static List<RepairScar> candidates(RepairPlan plan) {
    return plan.scars().stream()
        .filter(scar -> scar.fitness() == Fitness.PLANT)
        .filter(scar -> scar.benefit() > 0 && scar.cost().total() > 0)
        .sorted(
            Comparator.comparingDouble((RepairScar scar) -> -scar.benefit() / scar.cost().total())
                .thenComparing(RepairScar::scarId, Ids.ORDER))
        .limit(MOST_CANDIDATES)
        .toList();
  }

  private MapLayer marks() {
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

  private String species(String key) {
    Species known = assessed.references().species().get(key);
    return known == null ? key : known.commonName();
  }

  private String cause(String key) {
    ScarCause known = assessed.references().causes().get(key);
    return known == null ? key : known.label();
  }

  private String severity(String key) {
    return assessed.references().severityClasses().stream()
        .filter(each -> each.key().equals(key))
        .map(SeverityClass::label)
        .findFirst()
        .orElse(text.get("unknown"));
  }

  private static OptionalDouble low(Damage damage) {
    return damage
        .interval()
        .map(interval -> OptionalDouble.of(PERCENT * interval.share().low()))
        .orElseGet(OptionalDouble::empty);
  }

  private static OptionalDouble high(Damage damage) {
    return damage
        .interval()
        .map(interval -> OptionalDouble.of(PERCENT * interval.share().high()))
        .orElseGet(OptionalDouble::empty);
  }

  private static Long optional(OptionalInt value) {
    return value.isPresent() ? (long) value.getAsInt() : null;
  }

  private static OptionalDouble known(boolean known, double value) {
    return known ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  private static OptionalDouble percent(OptionalDouble share) {
    return share.isPresent()
        ? OptionalDouble.of(PERCENT * share.getAsDouble())
        : OptionalDouble.empty();
  }
}
