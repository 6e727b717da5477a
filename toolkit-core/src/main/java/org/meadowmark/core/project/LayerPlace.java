package org.meadowmark.core.project;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.locationtech.jts.geom.Envelope;
import org.meadowmark.core.check.CheckedLayer;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.Located;

/**
 * A layer with its reference system looked up and the middle of each feature's envelope in degrees
 * on WGS 84; NaN where it cannot be projected.
 */
final class LayerPlace {
  private final CheckedLayer<?> layer;
  private final ResolvedCrs crs;
  private final double[] longitudes;
  private final double[] latitudes;

  LayerPlace(CheckedLayer<?> layer, CrsCatalog catalog) {
    this.layer = layer;
    this.crs = catalog.resolve(layer.crs(), layer.count().role(), refOf(layer));
    List<? extends Located> features = layer.features();
    longitudes = new double[features.size()];
    latitudes = new double[features.size()];
    MathTransform toDegrees = toDegrees(crs);
    GeometryProjector projector = new GeometryProjector(toDegrees, crs.northFirst());
    IntStream.range(0, features.size())
        .parallel()
        .forEach(i -> locate(features.get(i), i, projector));
  }

  private void locate(Located feature, int place, GeometryProjector projector) {
    Envelope box = feature.geometry().getEnvelopeInternal();
    double[] middle = {box.getMinX() + box.getWidth() / 2, box.getMinY() + box.getHeight() / 2};
    try {
      projector.project(middle);
      longitudes[place] = middle[0];
      latitudes[place] = middle[1];
    } catch (TransformException e) {
      longitudes[place] = Double.NaN;
      latitudes[place] = Double.NaN;
    }
  }

  private static MathTransform toDegrees(ResolvedCrs crs) {
    try {
      return CRS.findMathTransform(crs.crs(), DefaultGeographicCRS.WGS84, true);
    } catch (FactoryException e) {
      throw new IllegalStateException("no way from " + crs.label() + " to WGS 84", e);
    }
  }

  static FeatureRef refOf(CheckedLayer<?> layer) {
    return FeatureRef.layer(layer.count().file(), layer.count().layer());
  }

  LayerRole role() {
    return layer.count().role();
  }

  LayerCount count() {
    return layer.count();
  }

  CheckedLayer<?> layer() {
    return layer;
  }

  FeatureRef ref() {
    return refOf(layer);
  }

  ResolvedCrs crs() {
    return crs;
  }

  int size() {
    return longitudes.length;
  }

  boolean isWithin(int feature, GeographicDomain domain) {
    return domain.contains(longitudes[feature], latitudes[feature]);
  }

  long countOutside(GeographicDomain domain) {
    return IntStream.range(0, size()).filter(i -> !isWithin(i, domain)).count();
  }

  /** Extent in degrees of the middles of the features; null extent where there is none. */
  Envelope extent() {
    Envelope extent = new Envelope();
    for (int i = 0; i < size(); i++) {
      if (!Double.isNaN(longitudes[i])) {
        extent.expandToInclude(longitudes[i], latitudes[i]);
      }
    }
    return extent;
  }

  /** The middle value of the longitudes: one stray feature does not move it. */
  static OptionalDouble medianLongitude(List<LayerPlace> places) {
    return median(places.stream().map(p -> p.longitudes).toList());
  }

  /** The middle value of the latitudes. */
  static OptionalDouble medianLatitude(List<LayerPlace> places) {
    return median(places.stream().map(p -> p.latitudes).toList());
  }

  private static OptionalDouble median(List<double[]> values) {
    double[] sorted =
        values.stream()
            .flatMapToDouble(Arrays::stream)
            .filter(v -> !Double.isNaN(v))
            .sorted()
            .toArray();
    return sorted.length == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(sorted[(sorted.length - 1) / 2]);
  }
}
