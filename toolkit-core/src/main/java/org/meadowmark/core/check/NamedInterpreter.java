package org.meadowmark.core.check;

import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.survey.Field;

/**
 * Features with a name and no other property: channels, management and surveyed areas, barriers.
 */
final class NamedInterpreter<T extends Located> implements FeatureInterpreter<T> {
  /** Makes a feature. */
  @FunctionalInterface
  interface Maker<T> {
    T make(String id, FeatureRef ref, Geometry geometry, String name);
  }

  private final GeometryCheck.Kind kind;
  private final Maker<T> maker;

  NamedInterpreter(GeometryCheck.Kind kind, Maker<T> maker) {
    this.kind = kind;
    this.maker = maker;
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
  public Optional<T> interpret(
      String id,
      FeatureRef ref,
      Geometry geometry,
      LayerAttributes attributes,
      Map<String, Object> values,
      FeatureRemarks remarks) {
    String name = attributes.text(Field.NAME, values).orElse("");
    return Optional.of(maker.make(id, ref, geometry, name));
  }
}
