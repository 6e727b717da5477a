package org.meadowmark.core.model;

import java.util.Objects;

/**
 * Where a feature was read: enough for a person to find it again.
 *
 * @param file name of the file as given by the user
 * @param layer layer or table inside the file; the file's base name where a format has no layers
 * @param featureId identifier in the file: its id attribute where one is mapped, else the format's
 *     own feature id, row or line number; empty where the finding is about the whole layer
 */
public record FeatureRef(String file, String layer, String featureId) {
  private static final int LONGEST_NAME = 200;

  /**
   * Refuses a reference of which a part is missing; a part may be empty.
   *
   * @param file name of the file as given by the user
   * @param layer layer or table inside the file; the file's base name where a format has no layers
   * @param featureId identifier in the file: its id attribute where one is mapped, else the
   *     format's own feature id, row or line number; empty where the finding is about the whole
   *     layer
   * @throws NullPointerException if anything is null
   */
  public FeatureRef {
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(layer, "layer");
    Objects.requireNonNull(featureId, "featureId");
  }

  /**
   * {@return a reference to a whole layer}
   *
   * @param file name of the file as given by the user
   * @param layer layer or table inside the file
   */
  public static FeatureRef layer(String file, String layer) {
    return new FeatureRef(file, layer, "");
  }

  /**
   * {@code file: layer: feature id}, leaving out parts that are empty, without control characters;
   * a layer name or id that is very long is cut.
   */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(PlainText.line(file));
    if (!layer.isEmpty()) {
      text.append(": ").append(PlainText.line(layer, LONGEST_NAME));
    }
    if (!featureId.isEmpty()) {
      text.append(": ").append(PlainText.line(featureId, LONGEST_NAME));
    }
    return text.toString();
  }
}
