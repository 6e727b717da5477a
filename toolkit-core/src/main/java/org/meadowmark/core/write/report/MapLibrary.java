package org.meadowmark.core.write.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The map library that the page carries: its code, style and licence, from its jar. */
final class MapLibrary {
  /** Name and version, as its licence wants to be named. */
  static final String NAME = "Leaflet 1.9.4";

  private static final String HOME = "/META-INF/resources/webjars/leaflet/1.9.4/";

  private MapLibrary() {}

  /** The code, without the pointer to a file that the page does not carry. */
  static String script() {
    return read("dist/leaflet.js").replaceAll("(?m)^//# sourceMappingURL=.*$", "").strip();
  }

  /** The style, without pictures of controls that the page does not use. */
  static String style() {
    return read("dist/leaflet.css").replaceAll("[\\w-]+:\\s*url\\([^)]*\\)\\s*;?", "").strip();
  }

  /** The licence. */
  static String licence() {
    return read("LICENSE").strip();
  }

  private static String read(String name) {
    try (InputStream in = MapLibrary.class.getResourceAsStream(HOME + name)) {
      if (in == null) {
        throw new IllegalStateException("the map library has no " + name);
      }
      // A browser reads line ends like this before it takes the digest of a style or script.
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the map library", e);
    }
  }
}
