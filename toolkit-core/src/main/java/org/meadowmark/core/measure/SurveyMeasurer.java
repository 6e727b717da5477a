package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Ids;
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
  private final PartRules rules;
  private final Progress progress;
  private final int mostScarsOfSmallMeadow;

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
    this(survey, parameters, tables, progress, Meadows.MOST_SCARS_OF_SMALL);
  }

  /**
   * Creates a measurer of a part of a survey.
   *
   * @param rules what the rest of the survey decides
   */
  SurveyMeasurer(
      MetricSurvey part,
      Parameters parameters,
      ReferenceTables tables,
      Progress progress,
      PartRules rules) {
    this(part, parameters, tables, progress, Meadows.MOST_SCARS_OF_SMALL, rules);
  }

  SurveyMeasurer(
      MetricSurvey survey,
      Parameters parameters,
      ReferenceTables tables,
      Progress progress,
      int mostScarsOfSmallMeadow) {
    this(
        survey,
        parameters,
        tables,
        progress,
        mostScarsOfSmallMeadow,
        PartRules.ofWhole(survey.scars().size()));
  }

  private SurveyMeasurer(
      MetricSurvey survey,
      Parameters parameters,
      ReferenceTables tables,
      Progress progress,
      int mostScarsOfSmallMeadow,
      PartRules rules) {
    this.survey = survey;
    this.parameters = parameters;
    this.tables = tables;
    this.severity = new SeverityRule(tables, parameters);
    this.graphs = ScopeSummary.graphs(survey, parameters, rules.scarCount());
    this.rules = rules;
    this.progress = progress;
    this.mostScarsOfSmallMeadow = mostScarsOfSmallMeadow;
  }

  /**
   * A bed with its figures.
   *
   * @param pieces what is left of it, where it belongs to a meadow of several beds
   */
  record MeasuredBed(GrassPart part, Fragmentation fragmentation, List<Polygon> pieces) {}

  private record MeasuredMeadow(MeasuredGrass grass, List<MeasuredBed> beds) {}

  /**
   * Everything but totals and connectivity.
   *
   * @param footprints of the scars
   * @param beds by bed id
   * @param patches patches and gaps
   * @param meadows first bed of each meadow, in the order that patches know them by
   * @param errors intervals
   * @param totals makes the lines of totals
   */
  record Ground(
      List<Footprint> footprints,
      List<MeasuredBed> beds,
      PatchMap patches,
      List<String> meadows,
      DamageErrors errors,
      AreaMeasurer totals) {
    List<GrassPart> parts() {
      return beds.stream().map(MeasuredBed::part).toList();
    }
  }

  /** {@return everything measured in the survey, worked out anew at every call} */
  public Measurement measure() {
    Ground ground = ground();

    progress.begin("Totalling areas", survey.managementAreas().size());
    List<AreaMeasure> areas = ground.totals.measure(ground.parts());
    progress.end();

    progress.begin("Weighing patches and fillings", -1);
    Optional<ConnectivityDetail> connectivity =
        ground.patches.connectivityDetail(parameters, ground.footprints);
    progress.end();

    return new Measurement(
        scars(ground),
        scarsInBeds(ground.beds),
        beds(ground),
        areas,
        ground.patches.patches(),
        ground.patches.gaps().asList(ground.footprints),
        scarredGrass(ground),
        connectivity);
  }

  List<ScarMeasure> scars(Ground ground) {
    return measureScars(ground.footprints, ground.beds, ground.patches);
  }

  List<BedMeasure> beds(Ground ground) {
    return ground.beds.stream()
        .map(
            bed ->
                new BedMeasure(
                    bed.part.bed(),
                    AreaMeasurer.damage(List.of(bed.part), severity, ground.errors),
                    bed.fragmentation))
        .toList();
  }

  List<Measurement.ScarredGrass> scarredGrass(Ground ground) {
    return ground.beds.stream().flatMap(bed -> scarredGrass(bed.part)).toList();
  }

  Ground ground() {
    progress.begin("Outlining scars", survey.scars().size());
    SurveyedArea surveyed = new SurveyedArea(survey.surveyedArea());
    List<Footprint> footprints =
        new FootprintBuilder(survey.scale(), surveyed).buildAll(survey.scars());
    progress.end();

    progress.begin("Joining overlapping scars", -1);
    Meadows meadows =
        Meadows.of(survey, parameters, footprints, mostScarsOfSmallMeadow, rules.tiled());
    Optional<FootprintClusters> clusters =
        meadows.areTiled()
            ? Optional.empty()
            : Optional.of(new FootprintClusters(footprints, meadows.footprintIndex()));
    progress.end();

    progress.begin("Measuring beds", survey.beds().size());
    DamageErrors errors = DamageErrors.of(footprints, parameters, tables, severity);
    GrassPart.Maker maker =
        new GrassPart.Maker(
            footprints, meadows.footprintIndex(), surveyed, severity, survey.scale(), errors);
    List<MeasuredMeadow> measured =
        clusters
            .map(found -> atOnce(meadows, maker, found, footprints))
            .orElseGet(() -> tileByTile(meadows, maker, footprints));
    progress.end();

    Map<String, Integer> places = new HashMap<>();
    survey.beds().forEach(bed -> places.put(bed.id(), places.size()));
    List<MeasuredBed> plain =
        measured.stream()
            .flatMap(meadow -> meadow.beds.stream())
            .sorted(Comparator.comparingInt(bed -> places.get(bed.part.bed().id())))
            .toList();
    List<MeasuredBed> beds = errors.drawn() ? drawn(plain, maker) : plain;

    progress.begin("Finding patches and gaps", -1);
    // In the order of their first beds, so that sums over parts of a survey are those of the whole.
    List<MeasuredGrass> grass =
        measured.stream()
            .map(MeasuredMeadow::grass)
            .sorted(Comparator.comparingInt(meadow -> places.get(firstBed(meadow))))
            .toList();
    int whole = survey.managementAreas().isEmpty() ? 0 : survey.managementAreas().size() + 1;
    PatchMap patches =
        PatchMap.of(
            survey,
            parameters,
            grass,
            rules.graphs(graphs, whole, false),
            rules.graphs(graphs, whole, true));
    progress.end();
    return new Ground(
        footprints,
        beds,
        patches,
        grass.stream().map(SurveyMeasurer::firstBed).toList(),
        errors,
        new AreaMeasurer(
            survey,
            parameters,
            severity,
            errors,
            maker,
            patches,
            footprints,
            (line, after) -> rules.graphs(graphs, line, after),
            progress));
  }

  private static String firstBed(MeasuredGrass meadow) {
    return meadow.group().beds().get(0).id();
  }

  private Stream<Measurement.ScarredGrass> scarredGrass(GrassPart part) {
    String bed = part.bed().id();
    List<Geometry> parts = part.scarred();
    if (parts.size() == 1) {
      return parts.get(0).isEmpty()
          ? Stream.empty()
          : Stream.of(new Measurement.ScarredGrass(bed, parts.get(0), part.scarredSquareMetres()));
    }
    double factor = UniformScale.at(part.bed().geometry(), survey.scale()).areaFactor();
    return parts.stream()
        .map(tile -> new Measurement.ScarredGrass(bed, tile, tile.getArea() / factor));
  }

  private List<MeasuredMeadow> atOnce(
      Meadows meadows,
      GrassPart.Maker maker,
      FootprintClusters clusters,
      List<Footprint> footprints) {
    return meadows.small().parallelStream()
        .map(meadow -> atOnce(meadow, maker, clusters, footprints))
        .toList();
  }

  private List<MeasuredMeadow> tileByTile(
      Meadows meadows, GrassPart.Maker maker, List<Footprint> footprints) {
    List<MeasuredMeadow> measured = new ArrayList<>();
    // One after the other: each fills the threads, and each takes much memory.
    for (GrassGroup meadow : meadows.vast()) {
      measured.add(tileByTile(meadow, maker, meadows, footprints));
    }
    measured.addAll(
        meadows.small().parallelStream()
            .map(meadow -> tileByTile(meadow, maker, meadows, footprints))
            .toList());
    return measured;
  }

  private MeasuredMeadow atOnce(
      GrassGroup meadow,
      GrassPart.Maker maker,
      FootprintClusters clusters,
      List<Footprint> footprints) {
    double minimum = parameters.minimumPatchSquareMetres();
    if (meadow.beds().size() == 1) {
      Bed bed = meadow.beds().get(0);
      Scarring scarring = Scarring.of(bed.geometry(), clusters);
      Pieces after = Pieces.of(scarring.pieces(), minimum);
      GapColumns gaps = gaps(after, scarring, footprints);
      MeasuredBed measured =
          measured(bed, List.of(scarring.scarred()), after, gaps, maker, List.of());
      List<String> only = List.of(bed.id());
      return new MeasuredMeadow(
          new MeasuredGrass(
              meadow, after, after.patches().stream().map(patch -> only).toList(), gaps),
          List.of(measured));
    }
    List<MeasuredBed> beds =
        meadow.beds().parallelStream()
            .map(
                bed -> {
                  Scarring scarring = Scarring.of(bed.geometry(), clusters);
                  Pieces after = Pieces.of(scarring.pieces(), minimum);
                  return measured(
                      bed,
                      List.of(scarring.scarred()),
                      after,
                      gaps(after, scarring, footprints),
                      maker,
                      scarring.pieces());
                })
            .toList();
    Scarring scarring = Scarring.of(meadow.geometry(), clusters);
    Pieces after = Pieces.of(scarring.pieces(), minimum);
    return new MeasuredMeadow(
        new MeasuredGrass(
            meadow, after, bedsOfPieces(beds, after.patches()), gaps(after, scarring, footprints)),
        beds);
  }

  private static GapColumns gaps(Pieces after, Scarring scarring, List<Footprint> footprints) {
    GapColumns gaps = new GapColumns();
    GapFinder.find(after.patches(), scarring.cutters(), footprints).forEach(gaps::add);
    return gaps;
  }

  /** A piece of a bed taken alone lies in one patch: a point inside the one finds the other. */
  private static List<List<String>> bedsOfPieces(List<MeasuredBed> beds, List<Polygon> patches) {
    PieceLocator locator = new PieceLocator(patches);
    List<TreeSet<String>> ids = new ArrayList<>();
    patches.forEach(patch -> ids.add(new TreeSet<>(Ids.ORDER)));
    for (MeasuredBed bed : beds) {
      for (Polygon piece : bed.pieces) {
        locator
            .around(piece.getInteriorPoint().getCoordinate())
            .ifPresent(patch -> ids.get(patch).add(bed.part.bed().id()));
      }
    }
    return ids.stream().map(List::<String>copyOf).toList();
  }

  private MeasuredMeadow tileByTile(
      GrassGroup meadow, GrassPart.Maker maker, Meadows meadows, List<Footprint> footprints) {
    TiledMeadow tiled =
        TiledMeadow.of(
            meadow, footprints, meadows.footprintIndex(), parameters.minimumPatchSquareMetres());
    TiledMeadow.Joined joined = tiled.joined();
    boolean oneBed = meadow.beds().size() == 1;
    List<MeasuredBed> beds = new ArrayList<>();
    for (int i = 0; i < meadow.beds().size(); i++) {
      TiledMeadow.Shape shape = oneBed ? joined.shape() : tiled.bed(i);
      beds.add(
          measured(
              meadow.beds().get(i),
              shape.scarred(),
              shape.pieces(),
              shape.gaps(),
              maker,
              List.of()));
    }
    return new MeasuredMeadow(joined.grass(), beds);
  }

  private MeasuredBed measured(
      Bed bed,
      List<Geometry> scarred,
      Pieces after,
      GapColumns gaps,
      GrassPart.Maker maker,
      List<Polygon> pieces) {
    Pieces before =
        Pieces.of(Scarring.polygonsOf(bed.geometry()), parameters.minimumPatchSquareMetres());
    UniformScale scale = UniformScale.at(bed.geometry(), survey.scale());
    Fragmentation fragmentation =
        ScopeSummary.compare(
            ScopeSummary.of(before, scale, graphs),
            ScopeSummary.of(after, scale, graphs),
            gaps.minimumWidthsMetres(),
            parameters);
    MeasuredBed measured = new MeasuredBed(maker.whole(bed, scarred), fragmentation, pieces);
    progress.advance(1);
    return measured;
  }

  private List<MeasuredBed> drawn(List<MeasuredBed> beds, GrassPart.Maker maker) {
    progress.begin("Drawing widths and positions", beds.size());
    List<MeasuredBed> drawn =
        beds.parallelStream()
            .map(
                bed -> {
                  GrassPart part = maker.drawn(bed.part);
                  progress.advance(1);
                  return new MeasuredBed(part, bed.fragmentation, List.of());
                })
            .toList();
    progress.end();
    return drawn;
  }

  List<ScarInBed> scarsInBeds(List<MeasuredBed> beds) {
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
