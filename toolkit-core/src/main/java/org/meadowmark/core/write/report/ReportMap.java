package org.meadowmark.core.write.report;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.write.proposal.GridPlaces;

/**
 * The map of a report.
 *
 * @param gridLabel the analysis grid
 * @param origin place that coordinates count from
 * @param extent the survey
 * @param fit degrees and ground scale around it
 * @param layers layers, those to draw first first
 * @param codes their geometry, in the same order
 */
record ReportMap(
    String gridLabel,
    Coordinate origin,
    Envelope extent,
    GridFit fit,
    List<MapLayer> layers,
    List<GeometryCode> codes) {

  /**
   * The map of a survey.
   *
   * @param mostVertices vertices of a layer to aim for
   */
  static ReportMap of(MetricSurvey survey, List<MapLayer> layers, long mostVertices) {
    Envelope extent = extent(layers);
    Coordinate origin = new Coordinate(Math.rint(extent.getMinX()), Math.rint(extent.getMinY()));
    return new ReportMap(
        survey.gridLabel(),
        origin,
        extent,
        GridFit.of(extent, GridPlaces.of(survey.gridWkt()), survey.scale()),
        layers,
        layers.stream()
            .map(layer -> GeometryCode.of(layer.geometries(), origin, mostVertices))
            .toList());
  }

  private static Envelope extent(List<MapLayer> layers) {
    Envelope extent = new Envelope();
    layers.stream()
        .filter(layer -> !layer.isBackground())
        .flatMap(layer -> layer.geometries().stream())
        .forEach(geometry -> extent.expandToInclude(geometry.getEnvelopeInternal()));
    return extent.isNull() ? new Envelope(0, 1, 0, 1) : extent;
  }
}
