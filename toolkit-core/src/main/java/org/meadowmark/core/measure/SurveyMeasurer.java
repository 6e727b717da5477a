package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.Parameters;

/**
 * Measures damage, fragmentation and gaps of a survey.
 *
 * <p>Beds run in parallel; the result does not depend on the number of threads. Time is n log n in
 * vertices plus the number of scar and bed pairs that meet.
 */
public final class SurveyMeasurer {
  private final MetricSurvey survey;
  private final Parameters parameters;
  private final ReferenceTables tables;
  private final SeverityRule severity;
  private final PieceGraph.Maker graphs;
  private final Progress progress;

  /**
   * Creates a measurer.
   *
   * @param survey checked survey on a metric grid
   * @param parameters choices that change results
   * @param tables severity classes and causes of scars
   * @param progress hears how far the work is
   */
  public SurveyMeasurer(
      MetricSurvey survey, Parameters parameters, ReferenceTables tables, Progress progress) {
    this.survey = survey;
    this.parameters = parameters;
    this.tables = tables;
    this.severity = new SeverityRule(tables, parameters);
    this.graphs = ScopeSummary.graphs(survey, parameters);
    this.progress = progress;
  }

  private record MeasuredBed(GrassPart part, Scarring scarring, Fragmentation fragmentation) {}

  /** Measures everything. */
  public Measurement measure() {
    progress.begin("Outlining scars", survey.scars().size());
    SurveyedArea surveyed = new SurveyedArea(survey.surveyedArea());
    List<Footprint> footprints =
        new FootprintBuilder(survey.scale(), surveyed).buildAll(survey.scars());
    progress.end();

    progress.begin("Joining overlapping scars", -1);
    FootprintClusters clusters = new FootprintClusters(footprints);
    progress.end();

    progress.begin("Measuring beds", survey.beds().size());
    DamageErrors errors = DamageErrors.of(footprints, parameters, tables, severity);
    GrassPart.Maker maker =
        new GrassPart.Maker(footprints, clusters, surveyed, severity, survey.scale(), errors);
    List<MeasuredBed> measured =
        survey.beds().parallelStream()
            .map(bed -> measureBed(bed, maker, clusters, footprints))
            .toList();
    progress.end();

    List<MeasuredBed> beds = errors.drawn() ? drawn(measured, maker) : measured;

    progress.begin("Finding patches and gaps", -1);
    Map<String, Scarring> scarringOfBed = new HashMap<>();
    beds.forEach(bed -> scarringOfBed.put(bed.part.bed().id(), bed.scarring));
    PatchMap patches = PatchMap.of(survey, parameters, clusters, footprints, scarringOfBed, graphs);
    progress.end();

    progress.begin("Totalling areas", survey.managementAreas().size());
    List<AreaMeasure> areas =
        new AreaMeasurer(survey, parameters, severity, errors, maker, patches, graphs, progress)
            .measure(beds.stream().map(MeasuredBed::part).toList());
    progress.end();

    progress.begin("Weighing patches and fillings", -1);
    Optional<ConnectivityDetail> connectivity = patches.connectivityDetail(parameters);
    progress.end();

    return new Measurement(
        measureScars(footprints, beds, patches),
        scarsInBeds(beds),
        beds.stream()
            .map(
                bed ->
                    new BedMeasure(
                        bed.part.bed(),
                        AreaMeasurer.damage(List.of(bed.part), severity, errors),
                        bed.fragmentation))
            .toList(),
        areas,
        patches.patches(),
        patches.gaps(),
        beds.stream()
            .filter(bed -> !bed.part.scarred().isEmpty())
            .map(
                bed ->
                    new Measurement.ScarredGrass(
                        bed.part.bed().id(), bed.part.scarred(), bed.part.scarredSquareMetres()))
            .toList(),
        connectivity);
  }

  private MeasuredBed measureBed(
      Bed bed, GrassPart.Maker maker, FootprintClusters clusters, List<Footprint> footprints) {
    Scarring scarring = Scarring.of(bed.geometry(), clusters);
    GrassPart part = maker.whole(bed, scarring.scarred());
    double minimum = parameters.minimumPatchSquareMetres();
    Pieces before = Pieces.of(Scarring.polygonsOf(bed.geometry()), minimum);
    Pieces after = Pieces.of(scarring.pieces(), minimum);
    double[] widths =
        GapFinder.find(after.patches(), scarring.cutters(), footprints).stream()
            .mapToDouble(GapFinder.RawGap::minimumWidthMetres)
            .toArray();
    UniformScale scale = UniformScale.at(bed.geometry(), survey.scale());
    Fragmentation fragmentation =
        ScopeSummary.compare(
            ScopeSummary.of(before, scale, graphs),
            ScopeSummary.of(after, scale, graphs),
            widths,
            parameters);
    progress.advance(1);
    return new MeasuredBed(part, scarring, fragmentation);
  }

  private List<MeasuredBed> drawn(List<MeasuredBed> beds, GrassPart.Maker maker) {
    progress.begin("Drawing widths and positions", beds.size());
    List<MeasuredBed> drawn =
        beds.parallelStream()
            .map(
                bed -> {
                  GrassPart part = maker.drawn(bed.part);
                  progress.advance(1);
                  return new MeasuredBed(part, bed.scarring, bed.fragmentation);
                })
            .toList();
    progress.end();
    return drawn;
  }

  private List<ScarInBed> scarsInBeds(List<MeasuredBed> beds) {
    record Row(int scar, ScarInBed value) {}
    List<Row> rows = new ArrayList<>();
    for (MeasuredBed bed : beds) {
      for (GrassPart.ScarPart scar : bed.part.scars()) {
        rows.add(
            new Row(
                scar.scar(),
                new ScarInBed(
                    survey.scars().get(scar.scar()).id(),
                    bed.part.bed().id(),
                    scar.lengthMetres(),
                    scar.footprintSquareMetres())));
      }
    }
    // Beds come in id order and the sort is stable.
    rows.sort(Comparator.comparingInt(Row::scar));
    return rows.stream().map(Row::value).toList();
  }

  private List<ScarMeasure> measureScars(
      List<Footprint> footprints, List<MeasuredBed> beds, PatchMap patches) {
    int count = footprints.size();
    double[] lengthInBeds = new double[count];
    double[] areaInBeds = new double[count];
    int[] bedCount = new int[count];
    for (MeasuredBed bed : beds) {
      for (GrassPart.ScarPart scar : bed.part.scars()) {
        lengthInBeds[scar.scar()] += scar.lengthMetres();
        areaInBeds[scar.scar()] += scar.footprintSquareMetres();
        bedCount[scar.scar()]++;
      }
    }
    int[] gapCount = patches.gapCounts(count);
    return IntStream.range(0, count)
        .parallel()
        .mapToObj(
            i -> {
              Footprint footprint = footprints.get(i);
              double length = footprint.fullLineLength() / footprint.lengthFactor();
              double surveyedLength = footprint.line().getLength() / footprint.lengthFactor();
              Coordinate middle = footprint.scar().geometry().getEnvelopeInternal().centre();
              return new ScarMeasure(
                  footprint.scar(),
                  length,
                  lengthInBeds[i],
                  Math.max(0, surveyedLength - lengthInBeds[i]),
                  Math.max(0, length - surveyedLength),
                  footprint.fullArea() / footprint.areaFactor(),
                  areaInBeds[i],
                  bedCount[i],
                  gapCount[i],
                  survey.depth().depthMetres(middle.x, middle.y));
            })
        .toList();
  }
}
