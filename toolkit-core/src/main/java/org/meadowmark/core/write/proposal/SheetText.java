package org.meadowmark.core.write.proposal;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.TreeMap;

/** The words of a sheet, in one language. */
final class SheetText {
  private static final String BUNDLE = "org.meadowmark.core.write.proposal.sheet";

  private final ResourceBundle bundle;

  private SheetText(ResourceBundle bundle) {
    this.bundle = bundle;
  }

  /** The words in English, whatever language the machine is set to. */
  static SheetText english() {
    return new SheetText(
        ResourceBundle.getBundle(
            BUNDLE,
            Locale.ROOT,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES)));
  }

  /** A phrase. */
  String get(String key) {
    return bundle.getString(key);
  }

  /** A phrase with its gaps filled. Numbers come as text, so that no locale can touch them. */
  String get(String key, String... parts) {
    return new MessageFormat(bundle.getString(key), Locale.ROOT).format(parts);
  }

  /** Every phrase by key, for the template. */
  Map<String, String> all() {
    Map<String, String> phrases = new TreeMap<>();
    bundle.keySet().forEach(key -> phrases.put(key, bundle.getString(key)));
    return phrases;
  }
}
