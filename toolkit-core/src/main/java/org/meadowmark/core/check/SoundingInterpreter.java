package org.meadowmark.core.check;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.survey.Field;

/** Points with a depth. */
final class SoundingInterpreter implements FeatureInterpreter<Sounding> {
  @Override
  public GeometryCheck.Kind kind() {
    return GeometryCheck.Kind.POINTS;
  }

  @Override
  public Field[] fields() {
    return new Field[] {Field.DEPTH};
  }

  @Override
  public Optional<Sounding> interpret(
      String id,
      FeatureRef ref,
      Geometry geometry,
      LayerAttributes attributes,
      Map<String, Object> values,
      FeatureRemarks remarks) {
    try {
      OptionalDouble depth = attributes.metres(Field.DEPTH, values);
      if (depth.isPresent()) {
        return Optional.of(new Sounding(id, ref, geometry, depth.getAsDouble()));
      }
      remarks.skipped(FindingCode.VALUE_UNREADABLE, "no depth given", "point left out");
    } catch (NumberFormatException e) {
      remarks.skipped(
          FindingCode.VALUE_UNREADABLE,
          "depth '" + attributes.text(Field.DEPTH, values).orElse("") + "' is not a number",
          "point left out");
    }
    return Optional.empty();
  }
}
