package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.measure.AreaMeasure.GrassClass;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.AreaMeasure.SeverityGrass;
import org.meadowmark.core.measure.uncertainty.DamageInterval;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.survey.Parameters;

/** Totals of management areas, of what lies outside them, and of the survey. */
final class AreaMeasurer {
  private final MetricSurvey survey;
  private final Parameters parameters;
  private final SeverityRule severity;
  private final DamageErrors errors;
  private final GrassPart.Maker maker;
  private final PatchMap patches;
  private final List<Footprint> footprints;
  private final LineGraphs graphs;
  private final Progress progress;
  private final Map<String, String> classOfBed = new HashMap<>();

  AreaMeasurer(
      MetricSurvey survey,
      Parameters parameters,
      SeverityRule severity,
      DamageErrors errors,
      GrassPart.Maker maker,
      PatchMap patches,
      List<Footprint> footprints,
      LineGraphs graphs,
      Progress progress) {
    this.survey = survey;
    this.parameters = parameters;
    this.severity = severity;
    this.errors = errors;
    this.maker = maker;
    this.patches = patches;
    this.footprints = footprints;
    this.graphs = graphs;
    this.progress = progress;
  }

  /** Makes the graphs of a line, which has a number in the order of the lines. */
  interface LineGraphs {
    PieceGraph.Maker of(int line, boolean after);
  }

  /**
   * A line of totals before it is added up.
   *
   * @param area the management area, where it is one
   * @param parts beds and parts of beds
   * @param before patches before scarring
   * @param beforeOrigins where clipped ones come from; empty for the whole survey
   * @param after patches after scarring
   * @param afterOrigins the same for these
   * @param gapWidthsMetres widths of the gaps in it
   */
  record Line(
      Kind kind,
      Optional<MapArea> area,
      List<GrassPart> parts,
      ScopeSummary before,
      Optional<ClippedPieces.Origins> beforeOrigins,
      ScopeSummary after,
      Optional<ClippedPieces.Origins> afterOrigins,
      double[] gapWidthsMetres) {}

  List<AreaMeasure> measure(List<GrassPart> beds) {
    return lines(beds, this::total);
  }

  /** Something of every line: of each management area, of what lies outside, of the whole. */
  <T> List<T> lines(List<GrassPart> beds, Function<Line, T> use) {
    beds.forEach(bed -> classOfBed.put(bed.bed().id(), severity.classOf(severityShare(bed))));
    // One bed may be a third of all grass; lines side by side keep the other threads busy
    // meanwhile.
    List<Supplier<Line>> lines = new ArrayList<>();
    for (MapArea area : survey.managementAreas()) {
      int number = lines.size();
      lines.add(() -> managementArea(area, beds, number));
    }
    if (!survey.managementAreas().isEmpty()) {
      int number = lines.size();
      lines.add(() -> outside(beds, number));
    }
    lines.add(() -> whole(beds));
    return lines.parallelStream().map(line -> use.apply(line.get())).toList();
  }

  private Line managementArea(MapArea area, List<GrassPart> beds, int number) {
    Line line =
        clippedLine(
            Kind.MANAGEMENT_AREA,
            Optional.of(area),
            beds,
            area.geometry(),
            OverlayNG.INTERSECTION,
            number);
    progress.advance(1);
    return line;
  }

  private Line outside(List<GrassPart> beds, int number) {
    Geometry all =
        UnaryUnionOp.union(survey.managementAreas().stream().map(MapArea::geometry).toList());
    return clippedLine(
        Kind.OUTSIDE_MANAGEMENT_AREAS, Optional.empty(), beds, all, OverlayNG.DIFFERENCE, number);
  }

  private Line whole(List<GrassPart> beds) {
    return new Line(
        Kind.WHOLE_SURVEY,
        Optional.empty(),
        beds,
        patches.before(),
        Optional.empty(),
        patches.after(),
        Optional.empty(),
        patches.gaps().minimumWidthsMetres());
  }

  private Line clippedLine(
      Kind kind,
      Optional<MapArea> area,
      List<GrassPart> beds,
      Geometry shape,
      int operation,
      int number) {
    PreparedGeometry prepared = PreparedGeometryFactory.prepare(shape);
    boolean inside = operation == OverlayNG.INTERSECTION;
    List<GrassPart> parts =
        beds.parallelStream()
            .map(
                bed -> {
                  if (!prepared.intersects(bed.geometry())) {
                    return inside ? null : bed;
                  }
                  if (prepared.contains(bed.geometry())) {
                    return inside ? bed : null;
                  }
                  return maker.clipped(bed, prepared, operation);
                })
            .filter(part -> part != null && part.grassSquareMetres() > 0)
            .toList();
    double[] widths = gapWidths(prepared, inside);
    double minimum = parameters.minimumPatchSquareMetres();
    ScopeSummary.Clipped before =
        patches.before().clipped(shape, operation, minimum, graphs.of(number, false));
    ScopeSummary.Clipped after =
        patches.after().clipped(shape, operation, minimum, graphs.of(number, true));
    return new Line(
        kind,
        area,
        parts,
        before.summary(),
        Optional.of(before.origins()),
        after.summary(),
        Optional.of(after.origins()),
        widths);
  }

  /** Widths of gaps that meet a shape, or of those that do not. */
  private double[] gapWidths(PreparedGeometry shape, boolean inside) {
    GapColumns gaps = patches.gaps();
    int count = gaps.count();
    int[] starts =
        IntStream.range(0, count).filter(i -> i == 0 || gaps.scar(i) != gaps.scar(i - 1)).toArray();
    return IntStream.range(0, starts.length)
        .parallel()
        .mapToObj(
            s -> {
              int end = s + 1 < starts.length ? starts[s + 1] : count;
              return widthsOfScar(shape, inside, starts[s], end);
            })
        .flatMapToDouble(Function.identity())
        .toArray();
  }

  private DoubleStream widthsOfScar(PreparedGeometry shape, boolean inside, int from, int to) {
    GapColumns gaps = patches.gaps();
    Geometry line = footprints.get(gaps.scar(from)).line();
    boolean all = !line.isEmpty() && shape.contains(line);
    boolean none = !line.isEmpty() && !all && !shape.intersects(line);
    IntStream kept = IntStream.range(from, to);
    if (all || none) {
      kept = all == inside ? kept : IntStream.empty();
    } else {
      kept = kept.filter(i -> shape.intersects(gaps.geometry(i, footprints)) == inside);
    }
    return kept.mapToDouble(gaps::minimumWidthMetres);
  }

  private AreaMeasure total(Line line) {
    return new AreaMeasure(
        line.kind,
        line.area,
        line.parts.size(),
        damage(line.parts, severity, errors),
        ScopeSummary.compare(line.before, line.after, line.gapWidthsMetres, parameters),
        byClass(grass(line.parts)),
        bySeverity(grass(line.parts), severity));
  }

  /**
   * Grass of a bed in a line.
   *
   * @param bedId the bed
   * @param severityKey severity class of the bed as a whole
   * @param lengthMetres length of scars in it
   */
  record Grass(
      String bedId,
      String species,
      String texture,
      String severityKey,
      double grassSquareMetres,
      double surveyedSquareMetres,
      double scarredSquareMetres,
      double denominatorSquareMetres,
      double lengthMetres) {}

  /** The figures of parts that are added up. */
  List<Grass> grass(List<GrassPart> parts) {
    return parts.stream()
        .map(
            part ->
                new Grass(
                    part.bed().id(),
                    part.bed().species(),
                    part.bed().texture(),
                    classOfBed.get(part.bed().id()),
                    part.grassSquareMetres(),
                    part.surveyedSquareMetres(),
                    part.scarredSquareMetres(),
                    part.denominatorSquareMetres(),
                    part.scarLengthMetres()))
        .toList();
  }

  private static OptionalDouble severityShare(GrassPart bed) {
    return SeverityRule.share(
        bed.surveyedSquareMetres(), bed.scarredSquareMetres(), bed.denominatorSquareMetres());
  }

  static List<SeverityGrass> bySeverity(List<Grass> parts, SeverityRule severity) {
    Map<String, Double> areas = new LinkedHashMap<>();
    severity.classKeys().forEach(key -> areas.put(key, 0.0));
    areas.put(SeverityRule.UNKNOWN, 0.0);
    for (Grass part : parts) {
      double surveyed = Math.min(part.surveyedSquareMetres(), part.grassSquareMetres());
      areas.merge(part.severityKey(), surveyed, Double::sum);
      areas.merge(SeverityRule.UNKNOWN, part.grassSquareMetres() - surveyed, Double::sum);
    }
    return areas.entrySet().stream()
        .filter(entry -> entry.getValue() > 0)
        .map(entry -> new SeverityGrass(entry.getKey(), entry.getValue()))
        .toList();
  }

  static List<GrassClass> byClass(List<Grass> parts) {
    record Key(String species, String texture) {}
    Map<Key, GrassClass> classes =
        new TreeMap<>(Comparator.comparing(Key::species).thenComparing(Key::texture));
    for (Grass part : parts) {
      Key key = new Key(part.species(), part.texture());
      classes.merge(
          key,
          new GrassClass(
              key.species, key.texture, part.grassSquareMetres(), part.scarredSquareMetres()),
          (a, b) ->
              new GrassClass(
                  a.species(),
                  a.texture(),
                  a.grassSquareMetres() + b.grassSquareMetres(),
                  a.scarredSquareMetres() + b.scarredSquareMetres()));
    }
    return List.copyOf(classes.values());
  }

  /** Damage of one or more pieces of grass that do not overlap. */
  static Damage damage(List<GrassPart> parts, SeverityRule severity, DamageErrors errors) {
    Sums sums = new Sums();
    Set<Integer> scars = new HashSet<>();
    for (GrassPart part : parts) {
      sums.add(
          part.grassSquareMetres(),
          part.surveyedSquareMetres(),
          part.scarredSquareMetres(),
          part.denominatorSquareMetres(),
          part.scarLengthMetres());
      part.scars().forEach(scar -> scars.add(scar.scar()));
    }
    return sums.damage(
        scars.size(), severity, errors.interval(parts, sums.surveyed, sums.denominator));
  }

  /** Figures of pieces of grass, added up in their order. */
  static final class Sums {
    private double grass;
    private double surveyed;
    private double scarred;
    private double denominator;
    private double length;

    void add(
        double grassSquareMetres,
        double surveyedSquareMetres,
        double scarredSquareMetres,
        double denominatorSquareMetres,
        double lengthMetres) {
      grass += grassSquareMetres;
      surveyed += surveyedSquareMetres;
      scarred += scarredSquareMetres;
      denominator += denominatorSquareMetres;
      length += lengthMetres;
    }

    double surveyedSquareMetres() {
      return surveyed;
    }

    double denominatorSquareMetres() {
      return denominator;
    }

    Damage damage(int scarCount, SeverityRule severity, Optional<DamageInterval> interval) {
      OptionalDouble severityShare = SeverityRule.share(surveyed, scarred, denominator);
      return new Damage(
          grass,
          surveyed,
          scarCount,
          length,
          scarred,
          SeverityRule.share(surveyed, scarred, surveyed),
          severity.classOf(severityShare),
          severityShare,
          severity.denominator(),
          interval);
    }
  }
}
