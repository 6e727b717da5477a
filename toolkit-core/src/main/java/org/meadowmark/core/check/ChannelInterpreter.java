package org.meadowmark.core.check;

import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.survey.Field;

/** Channels: name. */
final class ChannelInterpreter implements FeatureInterpreter<Channel> {
  @Override
  public GeometryCheck.Kind kind() {
    return GeometryCheck.Kind.LINES;
  }

  @Override
  public Field[] fields() {
    return new Field[] {Field.NAME};
  }

  @Override
  public Optional<Channel> interpret(
      String id,
      FeatureRef ref,
      Geometry geometry,
      LayerAttributes attributes,
      Map<String, Object> values,
      FeatureRemarks remarks) {
    String name = attributes.text(Field.NAME, values).orElse("");
    return Optional.of(new Channel(id, ref, geometry, name));
  }
}
