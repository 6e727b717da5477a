package org.meadowmark.core.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.store.RowStore;

/**
 * Checks how the features of a survey lie to each other; needs metres, so it runs after projecting.
 *
 * <ul>
 *   <li>A scar or channel that copies another (see {@link DuplicateFinder}) is left out; the one
 *       whose id comes first stays.
 *   <li>Channels that cross without a node, run over each other, close on themselves or run over
 *       land are listed and kept (see {@link ChannelLayout}).
 *   <li>A scar that touches no bed, or lies outside the surveyed area, is noted and kept.
 *   <li>A bed that lies wholly or partly outside the surveyed area is noted and kept: its damage
 *       there is unknown.
 *   <li>Beds that overlap are cut (see {@link BedOverlapResolver}).
 *   <li>Management areas that overlap are listed and kept: grass in the overlap counts in both.
 *   <li>A bed layer given as scars is an error: at least half of the scar polygons copy a bed, or
 *       there are only polygons, their median is larger than the median bed, and together they are
 *       larger than half of all beds. Groundings are smaller than the beds they lie in.
 * </ul>
 *
 * <p>Time O(n log n) in features for a bounded number of neighbours.
 */
public final class LayoutChecker {
  private final double sliverMetres;
  private final FindingLog log;
  private final Progress progress;

  /**
   * Creates the check.
   *
   * @param sliverToleranceMetres beds closer than this touch, and narrower overlaps are slivers
   * @param log takes the findings
   * @param progress hears how far the work is
   */
  public LayoutChecker(double sliverToleranceMetres, FindingLog log, Progress progress) {
    this.sliverMetres = sliverToleranceMetres;
    this.log = log;
    this.progress = progress;
  }

  /**
   * {@return the survey without copies and without overlaps of beds}
   *
   * @param survey the survey on its analysis grid
   */
  public MetricSurvey check(MetricSurvey survey) {
    progress.begin("Checking the layout", 6);
    GeometryIndex bedIndex = index(survey.beds());
    checkScarPolygons(survey);
    List<Scar> scars =
        withoutCopies(survey.scars(), LayerRole.SCARS, FindingCode.DUPLICATE_SCAR, "scar");
    List<Channel> channels =
        withoutCopies(
            survey.channels(), LayerRole.CHANNELS, FindingCode.CHANNEL_DUPLICATE, "channel");
    progress.advance(1);
    ChannelLayout layout = new ChannelLayout(channels, survey.scale(), sliverMetres, log);
    layout.checkNetwork();
    layout.checkLand(survey.barriers());
    progress.advance(1);
    noteOutside(
        scars,
        bedIndex,
        FindingCode.SCAR_OUTSIDE_BEDS,
        "lies outside every bed",
        "kept; it adds no damage to any bed");
    progress.advance(1);
    if (!survey.surveyedArea().isEmpty()) {
      GeometryIndex surveyed = index(survey.surveyedArea());
      noteOutside(
          scars,
          surveyed,
          FindingCode.SCAR_OUTSIDE_SURVEY,
          "lies outside the surveyed area",
          "kept; it adds no damage, since nothing counts as surveyed there");
      noteBedsOutsideSurvey(survey, surveyed);
    }
    progress.advance(1);
    List<Bed> beds = new BedOverlapResolver(survey.beds(), bedIndex, sliverMetres).resolve(log);
    progress.advance(1);
    listAreaOverlaps(survey.managementAreas());
    progress.advance(1);
    progress.end();
    return new MetricSurvey(
        survey.gridLabel(),
        survey.gridWkt(),
        scars,
        beds,
        channels,
        survey.managementAreas(),
        survey.surveyedArea(),
        survey.barriers(),
        survey.depth(),
        survey.scale());
  }

  private <T extends Located> List<T> withoutCopies(
      List<T> features, LayerRole role, FindingCode code, String what) {
    DuplicateFinder<T> finder = new DuplicateFinder<>();
    IntStream.Builder kept = IntStream.builder();
    for (int i = 0; i < features.size(); i++) {
      T feature = features.get(i);
      Optional<T> first = finder.findOrRemember(feature);
      if (first.isEmpty()) {
        kept.add(i);
        continue;
      }
      String other = first.get().id();
      log.add(
          new Finding(
              code,
              Level.WARNING,
              Treatment.SKIPPED,
              role,
              feature.ref(),
              "the same line or outline as " + what + " " + other,
              "left out; " + what + " " + other + " is used"));
    }
    return RowStore.picked(features, kept.build().toArray());
  }

  private void noteOutside(
      List<Scar> scars, GeometryIndex index, FindingCode code, String problem, String action) {
    scars.parallelStream()
        .filter(scar -> !index.anyIntersects(scar.geometry()))
        .map(
            scar ->
                new Finding(
                    code, Level.NOTE, Treatment.KEPT, LayerRole.SCARS, scar.ref(), problem, action))
        .forEach(log::add);
  }

  private void noteBedsOutsideSurvey(MetricSurvey survey, GeometryIndex surveyed) {
    List<Bed> doubtful =
        survey.beds().parallelStream().filter(bed -> !surveyed.anyCovers(bed.geometry())).toList();
    if (doubtful.isEmpty()) {
      return;
    }
    Geometry looked =
        OverlayNGRobust.union(survey.surveyedArea().stream().map(Located::geometry).toList());
    doubtful.parallelStream()
        .map(bed -> outsideSurvey(bed, surveyed, looked))
        .flatMap(Optional::stream)
        .forEach(log::add);
  }

  private Optional<Finding> outsideSurvey(Bed bed, GeometryIndex surveyed, Geometry looked) {
    Geometry grass = bed.geometry();
    boolean touched = surveyed.anyIntersects(grass);
    Geometry outside =
        touched ? OverlayNGRobust.overlay(grass, looked, OverlayNG.DIFFERENCE) : grass;
    if (!(outside.getArea() > 0) || isSliver(outside)) {
      return Optional.empty();
    }
    boolean wholly = !touched || outside.getArea() >= grass.getArea() * (1 - 1e-12);
    String problem =
        wholly
            ? "lies wholly outside the surveyed area"
            : "lies partly outside the surveyed area, by "
                + Figures.squareMetres(outside.getArea());
    return Optional.of(
        new Finding(
            FindingCode.BED_OUTSIDE_SURVEY,
            Level.NOTE,
            Treatment.KEPT,
            LayerRole.BEDS,
            bed.ref(),
            problem,
            "kept; its damage there is unknown, not zero"));
  }

  private void listAreaOverlaps(List<MapArea> areas) {
    GeometryIndex index = index(areas);
    IntStream.range(0, areas.size())
        .parallel()
        .boxed()
        .flatMap(i -> areaOverlaps(areas, index, i).stream())
        .forEach(log::add);
  }

  private List<Finding> areaOverlaps(List<MapArea> areas, GeometryIndex index, int place) {
    MapArea area = areas.get(place);
    List<Finding> findings = new ArrayList<>();
    for (int i : index.near(area.geometry(), 0).filter(n -> n < place).toArray()) {
      MapArea other = areas.get(i);
      if (!index.get(place).intersects(other.geometry())) {
        continue;
      }
      Geometry overlap =
          OverlayNGRobust.overlay(area.geometry(), other.geometry(), OverlayNG.INTERSECTION);
      if (overlap.getArea() > 0) {
        boolean sliver = isSliver(overlap);
        findings.add(
            new Finding(
                FindingCode.AREA_OVERLAP,
                sliver ? Level.NOTE : Level.WARNING,
                Treatment.KEPT,
                LayerRole.MANAGEMENT_AREAS,
                area.ref(),
                "overlaps management area "
                    + other.label()
                    + " by "
                    + Figures.squareMetres(overlap.getArea()),
                "kept; grass in the overlap counts in both"));
      }
    }
    return findings;
  }

  private void checkScarPolygons(MetricSurvey survey) {
    List<Scar> polygons = survey.scars().stream().filter(scar -> !scar.isLine()).toList();
    if (polygons.isEmpty() || survey.beds().isEmpty()) {
      return;
    }
    long copies = countCopiesOfBeds(polygons, survey.beds());
    boolean copiesBeds = 2 * copies >= polygons.size();
    boolean bedSized =
        polygons.size() == survey.scars().size()
            && medianArea(polygons) > medianArea(survey.beds())
            && totalArea(polygons) > totalArea(survey.beds()) / 2;
    if (!copiesBeds && !bedSized) {
      return;
    }
    FeatureRef first = polygons.get(0).ref();
    String problem =
        copiesBeds
            ? copies + " of " + polygons.size() + " scar polygons are beds"
            : "the scars are polygons as large as beds (median "
                + Figures.squareMetres(medianArea(polygons))
                + ")";
    log.add(
        new Finding(
            FindingCode.WRONG_GEOMETRY_TYPE,
            Level.ERROR,
            Treatment.REFUSED,
            LayerRole.SCARS,
            FeatureRef.layer(first.file(), first.layer()),
            problem,
            "a layer of beds or areas seems to be given as scars; give the layer of scars"));
  }

  private static long countCopiesOfBeds(List<Scar> polygons, List<Bed> beds) {
    DuplicateFinder<Bed> finder = new DuplicateFinder<>();
    beds.forEach(finder::findOrRemember);
    return polygons.stream().filter(scar -> finder.find(scar).isPresent()).count();
  }

  private static double medianArea(List<? extends Located> features) {
    double[] areas = features.stream().mapToDouble(f -> f.geometry().getArea()).sorted().toArray();
    return areas[areas.length / 2];
  }

  private static double totalArea(List<? extends Located> features) {
    return features.stream().mapToDouble(f -> f.geometry().getArea()).sum();
  }

  private boolean isSliver(Geometry geometry) {
    return 2 * geometry.getArea() / geometry.getLength() < sliverMetres;
  }

  private static GeometryIndex index(List<? extends Located> features) {
    return new GeometryIndex(features.stream().map(Located::geometry).toList());
  }
}
