package org.meadowmark.core.read;

import org.meadowmark.core.survey.LayerSource;

/** Reads layers of one file format. */
public interface LayerReader {
  /**
   * Reads a layer.
   *
   * @param source the layer
   * @param sink takes header, features and findings
   * @throws org.meadowmark.core.model.SurveyInputException if the file or layer cannot be read as a
   *     whole; its finding says what is wrong and what to do
   */
  void read(LayerSource source, FeatureSink sink);
}
