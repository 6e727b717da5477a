package org.meadowmark.core.project;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygonal;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.meadowmark.core.check.CheckedLayer;
import org.meadowmark.core.check.FindingLog;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.SurveyInputException;
import org.meadowmark.core.store.RowStore;

/** Projects the features of a layer to the analysis grid, in parallel, keeping their order. */
final class LayerProjector {
  private static final int PROGRESS_STEP = 1_000;
  private static final int FEATURES_AT_ONCE = 20_000;

  private final AnalysisGrid grid;
  private final GeographicDomain domain;
  private final FindingLog log;
  private final Progress progress;

  LayerProjector(AnalysisGrid grid, FindingLog log, Progress progress) {
    this.grid = grid;
    this.domain = GeographicDomain.of(grid.crs());
    this.log = log;
    this.progress = progress;
  }

  /**
   * The features of the layer on the grid; those that the grid does not reach, or whose projection
   * has no extent, are left out and listed.
   *
   * @param layer the layer
   * @param place where it lies
   * @param projected takes them, one lot after the other
   * @throws SurveyInputException if the grid reaches none of the features
   */
  <T extends Located> void project(
      CheckedLayer<T> layer, LayerPlace place, RowStore.Rows<T> projected) {
    refuseIfAllOutOfReach(place);
    GeometryProjector projector = projectorFrom(place.crs());
    List<T> features = layer.features();
    for (int start = 0; start < features.size(); start += FEATURES_AT_ONCE) {
      IntStream.range(start, Math.min(features.size(), start + FEATURES_AT_ONCE))
          .parallel()
          .mapToObj(i -> project(features.get(i), i, place, projector))
          .filter(Objects::nonNull)
          .toList()
          .forEach(projected::add);
    }
  }

  private void refuseIfAllOutOfReach(LayerPlace place) {
    if (place.size() == 0 || place.countOutside(domain) < place.size()) {
      return;
    }
    throw new SurveyInputException(
        new Finding(
            FindingCode.OUTSIDE_CRS_DOMAIN,
            Level.ERROR,
            Treatment.REFUSED,
            place.role(),
            place.ref(),
            "the whole layer lies out of reach of the analysis grid " + grid.label(),
            "check its reference system ("
                + place.crs().label()
                + ") and the one to measure in (analysis_crs)"));
  }

  GeometryProjector projectorFrom(ResolvedCrs crs) {
    try {
      return new GeometryProjector(
          CRS.findMathTransform(crs.crs(), grid.crs(), true), crs.northFirst());
    } catch (FactoryException e) {
      throw new IllegalStateException("no way from " + crs.label() + " to " + grid.label(), e);
    }
  }

  private <T extends Located> T project(
      T feature, int number, LayerPlace place, GeometryProjector projector) {
    if ((number + 1) % PROGRESS_STEP == 0) {
      progress.advance(PROGRESS_STEP);
    }
    if (!place.isWithin(number, domain)) {
      report(
          feature,
          place,
          FindingCode.OUTSIDE_CRS_DOMAIN,
          Treatment.SKIPPED,
          "the feature lies out of reach of the analysis grid " + grid.label(),
          "left out; check its coordinates, or set analysis_crs");
      return null;
    }
    try {
      return onGrid(feature, projector.project(feature.geometry()), place).orElse(null);
    } catch (TransformException e) {
      report(
          feature,
          place,
          FindingCode.OUTSIDE_CRS_DOMAIN,
          Treatment.SKIPPED,
          "a coordinate cannot be projected to " + grid.label(),
          "left out; check its coordinates");
      return null;
    }
  }

  private <T extends Located> Optional<T> onGrid(T feature, Geometry projected, LayerPlace place) {
    Geometry valid = projected;
    if (projected instanceof Polygonal && !projected.isValid()) {
      valid = new GeometryFixer(projected).getResult();
      report(
          feature,
          place,
          FindingCode.INVALID_POLYGON,
          valid.isEmpty() ? Treatment.SKIPPED : Treatment.REPAIRED,
          "projecting to " + grid.label() + " made the polygon invalid",
          valid.isEmpty() ? "left out; nothing remained after repair" : "repaired");
    }
    boolean vanished =
        valid.getDimension() > 0
            && !(valid.getDimension() == 2 ? valid.getArea() > 0 : valid.getLength() > 0);
    if (valid == projected && vanished) {
      report(
          feature,
          place,
          FindingCode.ZERO_LENGTH,
          Treatment.SKIPPED,
          "the feature has no extent on " + grid.label(),
          "left out");
    }
    if (valid.isEmpty() || vanished) {
      return Optional.empty();
    }
    @SuppressWarnings("unchecked")
    T moved = (T) feature.withGeometry(valid);
    return Optional.of(moved);
  }

  private void report(
      Located feature,
      LayerPlace place,
      FindingCode code,
      Treatment treatment,
      String problem,
      String action) {
    log.add(
        new Finding(code, Level.WARNING, treatment, place.role(), feature.ref(), problem, action));
  }
}
