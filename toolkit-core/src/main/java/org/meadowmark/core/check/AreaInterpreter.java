package org.meadowmark.core.check;

import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.survey.Field;

/** Management areas, surveyed areas and barriers: name. */
final class AreaInterpreter implements FeatureInterpreter<MapArea> {
  private final GeometryCheck.Kind kind;

  AreaInterpreter(GeometryCheck.Kind kind) {
    this.kind = kind;
  }

  @Override
  public GeometryCheck.Kind kind() {
    return kind;
  }

  @Override
  public Field[] fields() {
    return new Field[] {Field.NAME};
  }

  @Override
  public Optional<MapArea> interpret(
      String id,
      FeatureRef ref,
      Geometry geometry,
      LayerAttributes attributes,
      Map<String, Object> values,
      FeatureRemarks remarks) {
    String name = attributes.text(Field.NAME, values).orElse("");
    return Optional.of(new MapArea(id, ref, geometry, name));
  }
}
