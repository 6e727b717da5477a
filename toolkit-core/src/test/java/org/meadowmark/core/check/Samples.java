package org.meadowmark.core.check;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.meadowmark.core.TestParameters;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.reference.Species;
import org.meadowmark.core.survey.Field;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.LengthUnit;
import org.meadowmark.core.survey.Parameters;

/** Small inputs for the tests of this package and the next. */
public final class Samples {
  private Samples() {}

  public static Geometry wkt(String text) {
    try {
      return new WKTReader().read(text);
    } catch (ParseException e) {
      throw new IllegalArgumentException(text, e);
    }
  }

  public static ReferenceTables tables() {
    Map<String, ScarCause> causes = new LinkedHashMap<>();
    causes.put(
        "propeller", new ScarCause("propeller", "propeller", OptionalDouble.of(0.4), 0.3, "test"));
    causes.put("hull", new ScarCause("hull", "hull drag", OptionalDouble.empty(), 0.4, "test"));
    causes.put(
        "unknown", new ScarCause("unknown", "not known", OptionalDouble.of(0.4), 0.5, "test"));
    Map<String, Species> species =
        Map.of("turtlegrass", new Species("turtlegrass", "Thalassia testudinum", "", "test"));
    return new ReferenceTables(species, causes, List.of(), List.of(), Map.of());
  }

  public static Parameters parameters() {
    return parameters(Optional.empty(), true, OptionalDouble.empty());
  }

  public static Parameters parameters(
      Optional<String> analysisCrs, boolean groundScale, OptionalDouble pixel) {
    return TestParameters.of(
        "analysis_crs",
        analysisCrs.orElse(""),
        "ground_scale",
        groundScale,
        "crossing_distances_m",
        "1 10",
        "gap_width_limits_m",
        "1",
        "pixel_size_m",
        pixel.isPresent() ? pixel.getAsDouble() : "",
        "uncertainty_draws",
        0);
  }

  public static LayerSource source(LayerRole role) {
    return LayerSource.of(role, Path.of(role.key() + ".csv"));
  }

  public static LayerSource source(
      LayerRole role,
      Map<Field, String> attributes,
      Map<Field, Map<String, String>> valueNames,
      LengthUnit unit) {
    LayerSource plain = source(role);
    return new LayerSource(
        role,
        plain.file(),
        plain.fileLabel(),
        Optional.empty(),
        Optional.empty(),
        AxisOrder.EAST_FIRST,
        attributes,
        valueNames,
        unit,
        LayerSource.GeometryColumns.USUAL);
  }

  public static LayerHeader header(String... attributes) {
    return new LayerHeader(
        "layer", List.of(attributes), Optional.of(CrsText.ofCode("EPSG:32617")), -1);
  }

  public static SourceFeature feature(
      String fid, Geometry geometry, Map<String, Object> attributes) {
    return new SourceFeature(
        new FeatureRef("file", "layer", fid), Optional.ofNullable(geometry), attributes);
  }
}
