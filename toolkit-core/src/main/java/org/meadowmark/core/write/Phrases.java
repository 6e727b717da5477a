package org.meadowmark.core.write;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.TreeMap;

/** The words of a document, from a resource bundle, in one language. */
public final class Phrases {
  private final ResourceBundle bundle;

  private Phrases(ResourceBundle bundle) {
    this.bundle = bundle;
  }

  /**
   * {@return the words in English, whatever language the machine is set to}
   *
   * @param bundle base name of the bundle
   * @throws java.util.MissingResourceException if there is no such bundle
   */
  public static Phrases english(String bundle) {
    return new Phrases(
        ResourceBundle.getBundle(
            bundle,
            Locale.ROOT,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES)));
  }

  /**
   * {@return a phrase}
   *
   * @param key key of the phrase in the bundle
   * @throws java.util.MissingResourceException if the bundle has no such phrase
   */
  public String get(String key) {
    return bundle.getString(key);
  }

  /**
   * {@return a phrase with its gaps filled} Numbers come as text, so that no locale can touch them.
   *
   * @param key key of the phrase in the bundle, a pattern of {@link MessageFormat}
   * @param parts what goes into the gaps {@code {0}}, {@code {1}} and so on
   * @throws java.util.MissingResourceException if the bundle has no such phrase
   */
  public String get(String key, String... parts) {
    return new MessageFormat(bundle.getString(key), Locale.ROOT).format(parts);
  }

  /**
   * {@return every phrase whose key starts with a prefix, by the rest of the key}
   *
   * @param prefix how the keys begin; empty text for every phrase
   */
  public Map<String, String> all(String prefix) {
    Map<String, String> phrases = new TreeMap<>();
    bundle.keySet().stream()
        .filter(key -> key.startsWith(prefix))
        .forEach(key -> phrases.put(key.substring(prefix.length()), bundle.getString(key)));
    return phrases;
  }
}
