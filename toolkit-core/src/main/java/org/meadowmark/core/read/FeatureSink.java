package org.meadowmark.core.read;

import org.meadowmark.core.model.Finding;

/** Takes what a reader delivers: one header, then features and findings in file order. */
public interface FeatureSink {
  /**
   * Called once, before any feature.
   *
   * @param header what the file says about the layer
   */
  void header(LayerHeader header);

  /**
   * A feature that could be read.
   *
   * @param feature the feature, with its geometry in the file's coordinates
   */
  void feature(SourceFeature feature);

  /**
   * A feature that could not be read (skipped by the reader), or a remark on the layer.
   *
   * @param finding what is wrong or doubtful, and what is done about it
   */
  void finding(Finding finding);
}
