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
  private final PieceGraph.Maker graphs;
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
      PieceGraph.Maker graphs,
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

  List<AreaMeasure> measure(List<GrassPart> beds) {
    beds.forEach(bed -> classOfBed.put(bed.bed().id(), severity.classOf(severityShare(bed))));
    // One bed may be a third of all grass; lines side by side keep the other threads busy
    // meanwhile.
    List<Supplier<AreaMeasure>> lines = new ArrayList<>();
    for (MapArea area : survey.managementAreas()) {
      lines.add(() -> managementArea(area, beds));
    }
    if (!survey.managementAreas().isEmpty()) {
      lines.add(() -> outside(beds));
    }
    lines.add(() -> whole(beds));
    return lines.parallelStream().map(Supplier::get).toList();
  }

  private AreaMeasure managementArea(MapArea area, List<GrassPart> beds) {
    AreaMeasure line =
        clippedLine(
            Kind.MANAGEMENT_AREA, Optional.of(area), beds, area.geometry(), OverlayNG.INTERSECTION);
    progress.advance(1);
    return line;
  }

  private AreaMeasure outside(List<GrassPart> beds) {
    Geometry all =
        UnaryUnionOp.union(survey.managementAreas().stream().map(MapArea::geometry).toList());
    return clippedLine(
        Kind.OUTSIDE_MANAGEMENT_AREAS, Optional.empty(), beds, all, OverlayNG.DIFFERENCE);
  }

  private AreaMeasure whole(List<GrassPart> beds) {
    Fragmentation fragmentation =
        ScopeSummary.compare(
            patches.before(), patches.after(), patches.gaps().minimumWidthsMetres(), parameters);
    return line(Kind.WHOLE_SURVEY, Optional.empty(), beds, fragmentation);
  }

  private AreaMeasure clippedLine(
      Kind kind, Optional<MapArea> area, List<GrassPart> beds, Geometry shape, int operation) {
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
    Fragmentation fragmentation =
        ScopeSummary.compare(
            patches.before().clipped(shape, operation, minimum, graphs),
            patches.after().clipped(shape, operation, minimum, graphs),
            widths,
            parameters);
    return line(kind, area, parts, fragmentation);
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

  private AreaMeasure line(
      Kind kind, Optional<MapArea> area, List<GrassPart> parts, Fragmentation fragmentation) {
    return new AreaMeasure(
        kind,
        area,
        parts.size(),
        damage(parts, severity, errors),
        fragmentation,
        byClass(parts),
        bySeverity(parts));
  }

  private static OptionalDouble severityShare(GrassPart bed) {
    return SeverityRule.share(
        bed.surveyedSquareMetres(), bed.scarredSquareMetres(), bed.denominatorSquareMetres());
  }

  private List<SeverityGrass> bySeverity(List<GrassPart> parts) {
    Map<String, Double> areas = new LinkedHashMap<>();
    severity.classKeys().forEach(key -> areas.put(key, 0.0));
    areas.put(SeverityRule.UNKNOWN, 0.0);
    for (GrassPart part : parts) {
      double surveyed = Math.min(part.surveyedSquareMetres(), part.grassSquareMetres());
      areas.merge(classOfBed.get(part.bed().id()), surveyed, Double::sum);
      areas.merge(SeverityRule.UNKNOWN, part.grassSquareMetres() - surveyed, Double::sum);
    }
    return areas.entrySet().stream()
        .filter(entry -> entry.getValue() > 0)
        .map(entry -> new SeverityGrass(entry.getKey(), entry.getValue()))
        .toList();
  }

  private static List<GrassClass> byClass(List<GrassPart> parts) {
    record Key(String species, String texture) {}
    Map<Key, GrassClass> classes =
        new TreeMap<>(Comparator.comparing(Key::species).thenComparing(Key::texture));
    for (GrassPart part : parts) {
      Key key = new Key(part.bed().species(), part.bed().texture());
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
    double grass = 0;
    double surveyed = 0;
    double scarred = 0;
    double denominator = 0;
    double length = 0;
    Set<Integer> scars = new HashSet<>();
    for (GrassPart part : parts) {
      grass += part.grassSquareMetres();
      surveyed += part.surveyedSquareMetres();
      scarred += part.scarredSquareMetres();
      denominator += part.denominatorSquareMetres();
      for (GrassPart.ScarPart scar : part.scars()) {
        length += scar.lengthMetres();
        scars.add(scar.scar());
      }
    }
    OptionalDouble severityShare = SeverityRule.share(surveyed, scarred, denominator);
    return new Damage(
        grass,
        surveyed,
        scars.size(),
        length,
        scarred,
        SeverityRule.share(surveyed, scarred, surveyed),
        severity.classOf(severityShare),
        severityShare,
        severity.denominator(),
        errors.interval(parts, surveyed, denominator));
  }
}
