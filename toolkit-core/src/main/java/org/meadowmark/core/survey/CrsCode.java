package org.meadowmark.core.survey;

import java.util.Locale;
import org.meadowmark.core.model.MeadowmarkException;

/** Form of a reference system's code. Whether the authority knows it is found out later. */
final class CrsCode {
  private static final String FORM = "[A-Z][A-Z0-9]*:[0-9]+";

  private CrsCode() {}

  /**
   * The code in upper case.
   *
   * @throws MeadowmarkException if it does not look like {@code EPSG:32617}
   */
  static String of(String text, String where) {
    String code = text.strip().toUpperCase(Locale.ROOT);
    if (!code.matches(FORM)) {
      throw new MeadowmarkException(
          where + ": '" + text + "' is no reference system; write it like EPSG:32617");
    }
    return code;
  }
}
