package org.meadowmark.cluster.bay;

import java.io.File;
import java.io.Serializable;
import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.survey.Field;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.LayerSource.GeometryColumns;
import org.meadowmark.core.survey.LengthUnit;

/** A layer of a survey in a form that can travel between machines. */
record LayerSpec(
    LayerRole role,
    File file,
    String label,
    String crs,
    AxisOrder axisOrder,
    HashMap<Field, String> attributes,
    HashMap<Field, TreeMap<String, String>> values,
    LengthUnit widthUnit)
    implements Serializable {

  static LayerSpec of(LayerSource source) {
    HashMap<Field, TreeMap<String, String>> values = new HashMap<>();
    source
        .valueNames()
        .forEach(
            (field, words) -> {
              TreeMap<String, String> copy = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
              copy.putAll(words);
              values.put(field, copy);
            });
    return new LayerSpec(
        source.role(),
        source.file().toAbsolutePath().toFile(),
        source.fileLabel(),
        source.crs().orElse(""),
        source.axisOrder(),
        new HashMap<>(source.attributes()),
        values,
        source.widthUnit());
  }

  LayerSource source() {
    Map<Field, Map<String, String>> words = new HashMap<>();
    values.forEach((field, names) -> words.put(field, Collections.unmodifiableMap(names)));
    return new LayerSource(
        role,
        file.toPath(),
        label,
        Optional.empty(),
        crs.isEmpty() ? Optional.empty() : Optional.of(crs),
        axisOrder,
        attributes,
        words,
        widthUnit,
        GeometryColumns.USUAL);
  }
}
