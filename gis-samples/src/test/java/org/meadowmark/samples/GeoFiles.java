package org.meadowmark.samples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.read.geojson.GeoJsonLayerReader;
import org.meadowmark.core.read.geopackage.GeoPackageReader;
import org.meadowmark.core.read.shapefile.ShapefileLayerReader;
import org.meadowmark.core.survey.LayerSource;

/** Reads a whole layer with the toolkit's own readers. */
final class GeoFiles {
  private GeoFiles() {}

  record Content(LayerHeader header, List<SourceFeature> features, List<Finding> findings) {}

  static Content read(Path file, LayerRole role) {
    List<LayerHeader> headers = new ArrayList<>();
    List<SourceFeature> features = new ArrayList<>();
    List<Finding> findings = new ArrayList<>();
    FeatureSink sink =
        new FeatureSink() {
          @Override
          public void header(LayerHeader header) {
            headers.add(header);
          }

          @Override
          public void feature(SourceFeature feature) {
            features.add(feature);
          }

          @Override
          public void finding(Finding finding) {
            findings.add(finding);
          }
        };
    LayerSource source = LayerSource.of(role, file);
    if (file.toString().endsWith(".gpkg")) {
      new GeoPackageReader().read(source, sink);
    } else if (file.toString().endsWith(".shp")) {
      new ShapefileLayerReader().read(source, sink);
    } else {
      new GeoJsonLayerReader().read(source, sink);
    }
    return new Content(headers.get(0), features, findings);
  }
}
