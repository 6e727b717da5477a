package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.measure.PartEvidence.GapRow;
import org.meadowmark.core.measure.PartEvidence.PatchRow;
import org.meadowmark.core.measure.uncertainty.DrawnArea;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.Parameters;

/**
 * Measures a part of a survey with what measures a whole one, so that {@link PartMerger} can put
 * parts together.
 *
 * <p>A part holds whole groups of beds and scars that depend on each other, every management area,
 * surveyed area and barrier of the survey, its grid, scale and depth.
 */
public final class PartMeasurer {
  private final MetricSurvey part;
  private final Parameters parameters;
  private final ReferenceTables tables;
  private final PartRules rules;
  private final Progress progress;

  /**
   * Creates a measurer.
   *
   * @param part the part
   * @param parameters those of the survey
   * @param tables severity classes and causes of scars
   * @param rules what the rest of the survey decides
   * @param progress hears how far the work is
   */
  public PartMeasurer(
      MetricSurvey part,
      Parameters parameters,
      ReferenceTables tables,
      PartRules rules,
      Progress progress) {
    this.part = part;
    this.parameters = parameters;
    this.tables = tables;
    this.rules = rules;
    this.progress = progress;
  }

  /** {@return what the part gives, measured anew at every call} */
  public PartEvidence measure() {
    SurveyMeasurer measurer = new SurveyMeasurer(part, parameters, tables, progress, rules);
    SurveyMeasurer.Ground ground = measurer.ground();
    PatchMap patches = ground.patches();
    PatchMap.Origins origins = patches.origins();
    progress.begin("Totalling areas", part.managementAreas().size());
    List<PartEvidence.Line> lines =
        ground.totals().lines(ground.parts(), line -> line(line, ground.totals()));
    progress.end();
    List<List<String>> bedIds = patches.patches().stream().map(Patch::bedIds).toList();
    return new PartEvidence(
        new PartEvidence.Content(
            measurer.scars(ground),
            measurer.scarsInBeds(ground.beds()),
            measurer.beds(ground),
            measurer.scarredGrass(ground),
            ground.meadows(),
            rows(
                patches.before().pieces().patches(),
                List.of(),
                origins.patchesBefore(),
                origins.nearestBefore()),
            rows(
                patches.after().pieces().patches(),
                bedIds,
                origins.patchesAfter(),
                origins.nearestAfter()),
            origins.crumbsBefore(),
            origins.crumbsAfter(),
            gaps(ground),
            lines));
  }

  private static List<PatchRow> rows(
      List<Polygon> polygons,
      List<List<String>> bedIds,
      int[] meadows,
      PieceGraph.Nearest[] nearest) {
    return IntStream.range(0, polygons.size())
        .mapToObj(
            i ->
                new PatchRow(
                    polygons.get(i),
                    bedIds.isEmpty() ? List.of() : bedIds.get(i),
                    meadows[i],
                    nearest[i] == null ? -1 : nearest[i].piece(),
                    nearest[i] == null ? Double.NaN : nearest[i].metres()))
        .toList();
  }

  private static List<GapRow> gaps(SurveyMeasurer.Ground ground) {
    GapColumns columns = ground.patches().gaps();
    List<Gap> gaps = columns.asList(ground.footprints());
    List<GapRow> rows = new ArrayList<>();
    for (int i = 0; i < gaps.size(); i++) {
      Gap gap = gaps.get(i);
      rows.add(
          new GapRow(
              columns.scar(i),
              columns.first(i),
              columns.second(i),
              gap.minimumWidthMetres(),
              gap.meanWidthMetres().orElse(Double.NaN),
              gap.lengthMetres(),
              gap.geometry()));
    }
    return rows;
  }

  private PartEvidence.Line line(AreaMeasurer.Line line, AreaMeasurer totals) {
    Set<Integer> scars = new HashSet<>();
    line.parts().forEach(bed -> bed.scars().forEach(scar -> scars.add(scar.scar())));
    List<DrawnArea> drawn = line.parts().stream().flatMap(bed -> bed.drawn().stream()).toList();
    int draws = parameters.uncertaintyDraws();
    return new PartEvidence.Line(
        totals.grass(line.parts()),
        scars.size(),
        drawn.isEmpty() ? List.of() : DrawnArea.sum(drawn, draws).rows(draws),
        scope(line.before(), line.beforeOrigins()),
        scope(line.after(), line.afterOrigins()),
        line.gapWidthsMetres());
  }

  private static PartEvidence.Scope scope(
      ScopeSummary summary, Optional<ClippedPieces.Origins> clipped) {
    PatchFigures figures = summary.figures();
    PatchNetwork network = summary.graph().network();
    int patches = figures.squareMetres().length;
    ClippedPieces.Origins origins =
        clipped.orElseGet(
            () ->
                new ClippedPieces.Origins(
                    IntStream.range(0, patches).toArray(),
                    figures.perimeterMetres(),
                    new int[0],
                    IntStream.range(0, figures.crumbSquareMetres().length).toArray(),
                    IntStream.range(0, patches).toArray()));
    int[] edgePatches =
        IntStream.range(0, origins.edges().length).filter(i -> origins.edges()[i] != 0).toArray();
    return new PartEvidence.Scope(
        origins.patches(),
        network.gridAreas(),
        figures.squareMetres(),
        figures.completeSquareMetres(),
        figures.perimeterMetres(),
        edgePatches,
        IntStream.of(edgePatches).mapToDouble(i -> origins.edges()[i]).toArray(),
        origins.patchCrumbs(),
        origins.crumbs(),
        figures.crumbSquareMetres(),
        origins.nearest(),
        network.crossings().firsts(),
        network.crossings().seconds(),
        network.crossings().lengthsMetres());
  }
}
