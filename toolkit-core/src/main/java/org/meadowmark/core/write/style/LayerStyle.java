package org.meadowmark.core.write.style;

import java.util.List;

/**
 * How a layer is drawn.
 *
 * @param layer name of the layer
 * @param title what it shows
 * @param rules of each feature the rules that fit, in this order
 */
record LayerStyle(String layer, String title, List<StyleRule> rules) {
  LayerStyle {
    rules = List.copyOf(rules);
  }

  static LayerStyle of(String layer, String title, StyleRule... rules) {
    return new LayerStyle(layer, title, List.of(rules));
  }
}
