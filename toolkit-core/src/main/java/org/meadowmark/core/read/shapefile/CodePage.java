package org.meadowmark.core.read.shapefile;

import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Character sets by the names found in .cpg files. */
final class CodePage {
  private static final Pattern ISO_8859 = Pattern.compile("(?:ISO)?[-_ ]?8859[-_ ]?([0-9]{1,2})");
  private static final Pattern NUMBER =
      Pattern.compile("(?:ANSI|CP|OEM|WINDOWS)?[-_ ]?([0-9]{3,5})");
  private static final int UTF_8_CODE_PAGE = 65_001;

  private CodePage() {}

  /** Whether the text defers to the language driver id in the .dbf header ({@code LDID/87}). */
  static boolean isLanguageDriver(String text) {
    return text.strip().toUpperCase(Locale.ROOT).startsWith("LDID");
  }

  /** The character set of that name: UTF-8, ISO-8859-1, 88591, 1252, ANSI 1252, Big5, and so on. */
  static Optional<Charset> parse(String text) {
    String name = text.strip().toUpperCase(Locale.ROOT);
    if (name.equals("UTF8")) {
      return Optional.of(StandardCharsets.UTF_8);
    }
    Matcher iso = ISO_8859.matcher(name);
    if (iso.matches()) {
      return byName("ISO-8859-" + iso.group(1));
    }
    Matcher number = NUMBER.matcher(name);
    if (number.matches()) {
      int page = Integer.parseInt(number.group(1));
      if (page == UTF_8_CODE_PAGE) {
        return Optional.of(StandardCharsets.UTF_8);
      }
      return byName("windows-" + page)
          .or(() -> byName("IBM" + page))
          .or(() -> byName("x-IBM" + page))
          .or(() -> byName("MS" + page));
    }
    return byName(name);
  }

  private static Optional<Charset> byName(String name) {
    try {
      return Optional.of(Charset.forName(name));
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      return Optional.empty();
    }
  }
}
