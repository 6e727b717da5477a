package org.meadowmark.core.write.table;

import java.util.function.Function;
import org.meadowmark.core.model.FeatureRef;

/** Columns that say where a feature was read. */
final class SourceColumns {
  private SourceColumns() {}

  static <T> void add(TableLayout.Builder<T> table, Function<T, FeatureRef> ref) {
    table
        .text("source_file", "File the feature was read from.", row -> ref.apply(row).file())
        .text("source_layer", "Layer in that file.", row -> ref.apply(row).layer())
        .text(
            "source_feature",
            "Id of the feature in that layer: its id attribute, else row or line number.",
            row -> ref.apply(row).featureId());
  }
}
