package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.Measurement.ScarredGrass;
import org.meadowmark.core.measure.PartEvidence.GapRow;
import org.meadowmark.core.measure.PartEvidence.PatchRow;
import org.meadowmark.core.measure.connectivity.Sample;
import org.meadowmark.core.measure.uncertainty.DrawnArea;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.store.RowStore;
import org.meadowmark.core.survey.Parameters;

/**
 * Puts the parts of a survey together, in any order, to what a {@link SurveyMeasurer} of the whole
 * gives.
 *
 * <p>Rows go to a store. What stays in memory are columns: some 100 bytes a scar, 200 a patch, 50 a
 * gap and 16 a way between patches, and as much again for parts of patches in management areas.
 * Time n log n. Not safe for several threads.
 */
public final class PartMerger {
  private final List<MapArea> areas;
  private final GroundScale scale;
  private final Parameters parameters;
  private final SeverityRule severity;
  private final int mostPatches;
  private final int scarCount;
  private final boolean tiled;

  private final RowStore.Rows<ScarMeasure> scars;
  private final RowStore.Rows<ScarInBed> scarsInBeds;
  private final RowStore.Rows<BedMeasure> beds;
  private final RowStore.Rows<ScarredGrass> scarredGrass;
  private final RowStore.Rows<PatchRow> before;
  private final RowStore.Rows<PatchRow> after;
  private final RowStore.Rows<GapRow> gaps;
  private final List<MergedPart> parts = new ArrayList<>();

  /**
   * Starts with no part.
   *
   * @param areas management areas of the survey
   * @param scale its grid-to-ground scale
   * @param parameters those of the survey
   * @param tables severity classes
   * @param scarCount scars of the whole survey
   * @param tiled whether meadows are cut in tiles, see {@link PartRules#tiled}
   * @param store keeps rows
   */
  public PartMerger(
      List<MapArea> areas,
      GroundScale scale,
      Parameters parameters,
      ReferenceTables tables,
      int scarCount,
      boolean tiled,
      RowStore store) {
    this.areas = List.copyOf(areas);
    this.scale = scale;
    this.parameters = parameters;
    this.severity = new SeverityRule(tables, parameters);
    this.mostPatches = ScopeSummary.mostPatches(scarCount, parameters);
    this.scarCount = scarCount;
    this.tiled = tiled;
    scars = store.rows(ScarMeasure.class);
    scarsInBeds = store.rows(ScarInBed.class);
    beds = store.rows(BedMeasure.class);
    scarredGrass = store.rows(ScarredGrass.class);
    before = store.rows(PatchRow.class);
    after = store.rows(PatchRow.class);
    gaps = store.rows(GapRow.class);
  }

  /**
   * {@return rules for the next part} Where a line of totals has so many patches already that its
   * connectivity will be estimated, the next part keeps fewer ways; parts that were measured
   * without knowing it give the same figures but for rounding, and take more memory.
   */
  public PartRules rules() {
    List<Integer> thinnedBefore = new ArrayList<>();
    List<Integer> thinnedAfter = new ArrayList<>();
    int lines = areas.isEmpty() ? 1 : areas.size() + 2;
    for (int i = 0; i < lines; i++) {
      int line = i;
      if (parts.stream().mapToLong(p -> p.lines().get(line).before().patches().length).sum()
          > mostPatches) {
        thinnedBefore.add(i);
      }
      if (parts.stream().mapToLong(p -> p.lines().get(line).after().patches().length).sum()
          > mostPatches) {
        thinnedAfter.add(i);
      }
    }
    return new PartRules(scarCount, Optional.of(tiled), thinnedBefore, thinnedAfter);
  }

  /**
   * Adds a part. Its rows go to the store, its columns stay in memory.
   *
   * @param evidence what the part gave; each part once
   */
  public void add(PartEvidence evidence) {
    PartEvidence.Content part = evidence.content();
    MergedPart columns =
        MergedPart.of(
            part,
            new MergedPart.Starts(
                scars.list().size(),
                scarsInBeds.list().size(),
                beds.list().size(),
                scarredGrass.list().size(),
                before.list().size(),
                after.list().size(),
                gaps.list().size()));
    part.scars().forEach(scars::add);
    part.scarsInBeds().forEach(scarsInBeds::add);
    part.beds().forEach(beds::add);
    part.scarredGrass().forEach(scarredGrass::add);
    part.before().forEach(before::add);
    part.after().forEach(after::add);
    part.gaps().forEach(gaps::add);
    parts.add(columns);
  }

  /** {@return everything together} The rows are read from the store, which must stay open. */
  public Measurement merge() {
    MergedOrder.Places scarPlaces =
        MergedOrder.byId(parts, MergedPart::scarIds, p -> p.starts().scars());
    MergedOrder.Places bedPlaces =
        MergedOrder.byId(parts, MergedPart::bedIds, p -> p.starts().beds());
    int[][] meadowRanks = MergedOrder.ranksById(parts, MergedPart::meadowIds);
    MergedPatches patchesBefore =
        MergedPatches.of(parts, false, meadowRanks, scale, parameters, before.list());
    MergedPatches patchesAfter =
        MergedPatches.of(parts, true, meadowRanks, scale, parameters, after.list());
    Sample sample = new Sample(parameters.connectivitySources(), parameters.seed());
    MergedScopes scopesBefore =
        new MergedScopes(parts, patchesBefore, meadowRanks, false, mostPatches, sample);
    MergedScopes scopesAfter =
        new MergedScopes(parts, patchesAfter, meadowRanks, true, mostPatches, sample);
    int wholeLine = areas.isEmpty() ? 0 : areas.size() + 1;
    ScopeColumns wholeBefore = scopesBefore.of(wholeLine, true);
    ScopeColumns wholeAfter = scopesAfter.of(wholeLine, true);
    List<Patch> patches =
        new MergedPatches.Described(
            patchesAfter,
            after.list(),
            wholeAfter.figures(),
            wholeAfter.network().groups(parameters.crossingDistanceMetres()));
    MergedGaps mergedGaps = MergedGaps.of(parts, scarPlaces, patchesAfter, gaps.list());
    List<AreaMeasure> lines =
        IntStream.rangeClosed(0, wholeLine)
            .parallel()
            .mapToObj(
                line ->
                    line == wholeLine
                        ? total(line, wholeBefore, wholeAfter)
                        : total(line, scopesBefore.of(line, false), scopesAfter.of(line, false)))
            .toList();
    Optional<ConnectivityDetail> connectivity =
        patches.isEmpty() || patches.size() > parameters.connectivityDetailPatches()
            ? Optional.empty()
            : Optional.of(
                wholeAfter
                    .connectivity(wholeBefore.figures().totalSquareMetres())
                    .detail(patches, mergedGaps.columns(), mergedGaps::scarId, parameters));
    return new Measurement(
        RowStore.picked(scars.list(), scarPlaces.rows()),
        RowStore.picked(
            scarsInBeds.list(),
            scarPlaces.ranges(parts, MergedPart::inBedEnds, p -> p.starts().scarsInBeds())),
        RowStore.picked(beds.list(), bedPlaces.rows()),
        lines,
        patches,
        mergedGaps.list(),
        RowStore.picked(
            scarredGrass.list(),
            bedPlaces.ranges(parts, MergedPart::grassEnds, p -> p.starts().scarredGrass())),
        connectivity);
  }

  private AreaMeasure total(int line, ScopeColumns before, ScopeColumns after) {
    List<PartEvidence.Line> ofParts = parts.stream().map(part -> part.lines().get(line)).toList();
    List<AreaMeasurer.Grass> grass =
        ofParts.stream()
            .flatMap(part -> part.grass().stream())
            .sorted(Comparator.comparing(AreaMeasurer.Grass::bedId, Ids.ORDER))
            .toList();
    AreaMeasurer.Sums sums = new AreaMeasurer.Sums();
    grass.forEach(
        bed ->
            sums.add(
                bed.grassSquareMetres(),
                bed.surveyedSquareMetres(),
                bed.scarredSquareMetres(),
                bed.denominatorSquareMetres(),
                bed.lengthMetres()));
    List<DrawnArea> drawn =
        ofParts.stream()
            .filter(part -> !part.draws().isEmpty())
            .map(part -> DrawnArea.ofRows(0, part.draws()))
            .toList();
    double[] widths =
        ofParts.stream().flatMapToDouble(part -> Arrays.stream(part.gapWidthsMetres())).toArray();
    boolean isArea = line < areas.size();
    return new AreaMeasure(
        isArea
            ? Kind.MANAGEMENT_AREA
            : areas.isEmpty() || line == areas.size() + 1
                ? Kind.WHOLE_SURVEY
                : Kind.OUTSIDE_MANAGEMENT_AREAS,
        isArea ? Optional.of(areas.get(line)) : Optional.empty(),
        grass.size(),
        sums.damage(
            ofParts.stream().mapToInt(PartEvidence.Line::scarCount).sum(),
            severity,
            DamageErrors.model(parameters)
                .flatMap(
                    model ->
                        DamageErrors.interval(
                            model,
                            severity,
                            drawn,
                            sums.surveyedSquareMetres(),
                            sums.denominatorSquareMetres()))),
        ScopeSummary.compare(before, after, widths, parameters),
        AreaMeasurer.byClass(grass),
        AreaMeasurer.bySeverity(grass, severity));
  }
}
