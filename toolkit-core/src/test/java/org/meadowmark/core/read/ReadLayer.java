package org.meadowmark.core.read;

import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.locationtech.jts.io.WKTWriter;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.survey.LayerSource;

/** Keeps what a reader delivers, and checks that the header comes first and once. */
public final class ReadLayer implements FeatureSink {
  private LayerHeader header;
  private final List<SourceFeature> features = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();

  private ReadLayer() {}

  public static ReadLayer of(Path file) {
    return of(LayerSource.of(LayerRole.SCARS, file));
  }

  public static ReadLayer of(Path file, String layer) {
    LayerSource plain = LayerSource.of(LayerRole.SCARS, file);
    return of(
        new LayerSource(
            plain.role(),
            plain.file(),
            plain.fileLabel(),
            Optional.of(layer),
            plain.crs(),
            plain.axisOrder(),
            plain.attributes(),
            plain.valueNames(),
            plain.widthUnit(),
            plain.geometryColumns()));
  }

  public static ReadLayer of(LayerSource source) {
    ReadLayer layer = new ReadLayer();
    LayerReaders.read(source, layer);
    Objects.requireNonNull(layer.header, "no header came");
    return layer;
  }

  /** A committed file of this folder's fixtures. */
  public static Path fixture(String name) {
    try {
      return Path.of(
          Objects.requireNonNull(ReadLayer.class.getResource("/formats/" + name), name).toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void header(LayerHeader layerHeader) {
    if (header != null) {
      throw new IllegalStateException("a second header");
    }
    header = layerHeader;
  }

  @Override
  public void feature(SourceFeature feature) {
    Objects.requireNonNull(header, "a feature before the header");
    features.add(feature);
  }

  @Override
  public void finding(Finding finding) {
    Objects.requireNonNull(header, "a finding before the header");
    findings.add(finding);
  }

  public LayerHeader header() {
    return header;
  }

  public List<SourceFeature> features() {
    return features;
  }

  public List<Finding> findings() {
    return findings;
  }

  public List<String> ids() {
    return features.stream().map(feature -> feature.ref().featureId()).toList();
  }

  public String crsCode() {
    return header.crs().flatMap(crs -> crs.code()).orElse("");
  }

  /** Geometry of the feature in that place, from 0, as text with heights. */
  public String wkt(int index) {
    return features.get(index).geometry().map(new WKTWriter(3)::write).orElse("none");
  }

  public Geometry geometry(int index) {
    return features.get(index).geometry().orElseThrow();
  }

  public Map<String, Object> attributes(int index) {
    return features.get(index).attributes();
  }

  /** Features by their attribute {@code id}. */
  public Map<Object, SourceFeature> byIdAttribute() {
    Map<Object, SourceFeature> byId = new LinkedHashMap<>();
    features.forEach(feature -> byId.put(feature.attributes().get("id"), feature));
    return byId;
  }

  public static Geometry parsed(String wkt) {
    try {
      return new WKTReader().read(wkt);
    } catch (ParseException e) {
      throw new IllegalArgumentException(wkt, e);
    }
  }
}
