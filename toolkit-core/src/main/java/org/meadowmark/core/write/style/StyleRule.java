package org.meadowmark.core.write.style;

import java.util.List;

/**
 * A rule of a style.
 *
 * @param title what the sign means, for a legend
 * @param condition which features it draws
 * @param symbols signs, the lowest first
 */
record StyleRule(String title, Condition condition, List<Symbol> symbols) {
  StyleRule {
    symbols = List.copyOf(symbols);
  }

  static StyleRule of(String title, Condition condition, Symbol... symbols) {
    return new StyleRule(title, condition, List.of(symbols));
  }
}
