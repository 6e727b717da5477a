package org.meadowmark.core.check;

import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.Species;
import org.meadowmark.core.survey.Field;

/** Beds: species, texture and notes on the ground. */
final class BedInterpreter implements FeatureInterpreter<Bed> {
  private static final String UNKNOWN_SPECIES = "unknown";

  private final Map<String, Species> species;

  BedInterpreter(ReferenceTables tables) {
    this.species = tables.species();
  }

  @Override
  public GeometryCheck.Kind kind() {
    return GeometryCheck.Kind.POLYGONS;
  }

  @Override
  public Field[] fields() {
    return new Field[] {
      Field.SPECIES, Field.TEXTURE, Field.MUCK, Field.GRAZED, Field.SCARRED_AGAIN
    };
  }

  @Override
  public Optional<Bed> interpret(
      String id,
      FeatureRef ref,
      Geometry geometry,
      LayerAttributes attributes,
      Map<String, Object> values,
      FeatureRemarks remarks) {
    String texture = attributes.word(Field.TEXTURE, values).orElse("");
    return Optional.of(
        new Bed(
            id,
            ref,
            geometry,
            species(attributes, values, remarks),
            texture,
            NotesReader.of(attributes, values, remarks)));
  }

  private String species(
      LayerAttributes attributes, Map<String, Object> values, FeatureRemarks remarks) {
    Optional<String> word = attributes.word(Field.SPECIES, values);
    if (word.isEmpty() || species.containsKey(word.get()) || word.get().equals(UNKNOWN_SPECIES)) {
      return word.orElse("");
    }
    remarks.kept(
        FindingCode.SPECIES_UNKNOWN,
        "unknown species '" + attributes.text(Field.SPECIES, values).orElse("") + "'",
        "taken as 'unknown'; known species: " + String.join(", ", species.keySet()));
    return UNKNOWN_SPECIES;
  }
}
