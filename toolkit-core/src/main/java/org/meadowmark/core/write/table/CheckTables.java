package org.meadowmark.core.write.table;

import java.util.Locale;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.LayerCount;

/** Tables about the input. */
final class CheckTables {
  private CheckTables() {}

  static TableLayout<Finding> findings() {
    return TableLayout.<Finding>named(
            "findings",
            Finding.ORDER,
            "One row for each thing that is wrong or doubtful in the input.")
        .text("code", "Stable code of the problem.", row -> lower(row.code()))
        .text(
            "level",
            "error (the assessment cannot run), warning (the result is affected) or note.",
            row -> lower(row.level()))
        .text(
            "treatment",
            "What happened to the feature: kept, repaired, skipped or refused.",
            row -> lower(row.treatment()))
        .text("role", "Layer role the feature was read for.", row -> row.role().key())
        .text("file", "File the feature was read from.", row -> row.where().file())
        .text("layer", "Layer in that file.", row -> row.where().layer())
        .text(
            "feature_id",
            "Feature; no value where the finding is about the whole layer.",
            row -> row.where().featureId())
        .text("problem", "What is wrong.", Finding::problem)
        .text("action", "What was done, or what to do.", Finding::action)
        .build();
  }

  static TableLayout<LayerCount> layers() {
    return TableLayout.<LayerCount>named(
            "layers",
            LayerCount.ORDER,
            "One row an input layer: how many of its features went which way.")
        .text("role", "What the layer stands for in the survey.", row -> row.role().key())
        .text("file", "File.", LayerCount::file)
        .text("layer", "Layer in that file.", LayerCount::layer)
        .text("crs", "Reference system of the file.", LayerCount::crs)
        .count("read_count", "Features met in the file, readable or not.", LayerCount::read)
        .count("used_count", "Features that reach the measurement.", LayerCount::used)
        .count("repaired_count", "Used features that were changed first.", LayerCount::repaired)
        .count("skipped_count", "Features left out.", LayerCount::skipped)
        .build();
  }

  private static String lower(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
