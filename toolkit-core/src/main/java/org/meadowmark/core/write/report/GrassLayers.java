package org.meadowmark.core.write.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.BedMeasure;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.measure.Patch;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;
import org.meadowmark.core.write.Foremost;
import org.meadowmark.core.write.Phrases;
import org.meadowmark.core.write.report.MapLayer.Form;
import org.meadowmark.core.write.report.MapLayer.StyleClass;

/** Layers of grass: beds, management areas, patches. */
final class GrassLayers {
  private final AssessedSurvey assessed;
  private final LayerWords words;
  private final Phrases text;
  private final int most;

  GrassLayers(AssessedSurvey assessed, LayerWords words, int most) {
    this.assessed = assessed;
    this.words = words;
    this.text = words.text();
    this.most = most;
  }

  MapLayer beds() {
    List<BedMeasure> rows =
        assessed.measurement().beds().stream()
            .sorted(
                Comparator.comparingDouble((BedMeasure bed) -> -bed.damage().share().orElse(-1))
                    .thenComparing(bed -> bed.bed().id(), Ids.ORDER))
            .toList();
    List<StyleClass> classes = new ArrayList<>();
    List<SeverityClass> severities = assessed.references().severityClasses();
    Map<String, Integer> severityPlace = new HashMap<>();
    severities.forEach(each -> severityPlace.put(each.key(), severityPlace.size()));
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
            .text(text.get("col.species"), row -> words.species(row.bed().species()))
            .text(text.get("col.severity"), row -> words.severity(row.damage().severityKey()));
    damage(layer, BedMeasure::damage);
    return layer
        .optional(text.get("col.shareLow"), "%", row -> LayerWords.low(row.damage()))
        .optional(text.get("col.shareHigh"), "%", row -> LayerWords.high(row.damage()))
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
                LayerWords.known(
                    damage.apply(row).surveyedSquareMetres() > 0,
                    damage.apply(row).scarredSquareMetres()))
        .optional(text.get("col.share"), "%", row -> LayerWords.percent(damage.apply(row).share()));
  }

  MapLayer areas() {
    List<AreaMeasure> rows =
        assessed.measurement().areas().stream()
            .filter(area -> area.kind() == Kind.MANAGEMENT_AREA)
            .sorted(Comparator.comparing(area -> area.area().orElseThrow().id(), Ids.ORDER))
            .toList();
    MapLayer.Builder<AreaMeasure> layer =
        MapLayer.of("areas", Form.OUTLINE, rows, most)
            .text(text.get("col.area"), AreaMeasure::label)
            .text(text.get("col.severity"), row -> words.severity(row.damage().severityKey()));
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

  /** What tells which of two patches is larger. */
  private record Size(double squareMetres, String patchId) {
    static final Comparator<Size> LARGEST_FIRST =
        Comparator.comparingDouble((Size size) -> -size.squareMetres)
            .thenComparing(Size::patchId, Ids.ORDER);

    static Size of(Patch patch) {
      return new Size(patch.areaSquareMetres(), patch.id());
    }
  }

  MapLayer patches() {
    List<Patch> rows = assessed.measurement().patches();
    return MapLayer.chosen(
            "patches",
            Form.OUTLINE,
            Foremost.of(rows, Size::of, Size.LARGEST_FIRST, most),
            rows.size())
        .hidden()
        .text(text.get("col.patch"), Patch::id)
        .number(text.get("col.size"), "m²", Patch::areaSquareMetres)
        .number(text.get("col.perimeter"), "m", Patch::perimeterMetres)
        .text(text.get("col.nearestPatch"), row -> row.nearestPatchId().orElse(""))
        .optional(text.get("col.nearestDistance"), "m", Patch::nearestDistanceMetres)
        .text(text.get("col.group"), Patch::groupId)
        .build(Patch::geometry, text.get("class.patch"), "patch");
  }
}
