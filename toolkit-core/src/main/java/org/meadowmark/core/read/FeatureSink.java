package org.meadowmark.core.read;

import org.meadowmark.core.model.Finding;

/** Takes what a reader delivers: one header, then features and findings in file order. */
public interface FeatureSink {
  /** Called once, before any feature. */
  void header(LayerHeader header);

  /** A feature that could be read. */
  void feature(SourceFeature feature);

  /** A feature that could not be read (skipped by the reader), or a remark on the layer. */
  void finding(Finding finding);
}
