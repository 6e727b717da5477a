package org.meadowmark.core.read;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.meadowmark.core.model.CrsText;

/**
 * Reference systems by the names that files use: {@code EPSG:2882}, {@code
 * urn:ogc:def:crs:EPSG::2882}, {@code http://www.opengis.net/def/crs/EPSG/0/2882} and the CRS84
 * forms (longitude and latitude on WGS 84).
 */
public final class CrsNames {
  /** Longitude and latitude on WGS 84. */
  public static final CrsText WGS_84 = CrsText.ofCode("EPSG:4326");

  private static final List<Pattern> CODES =
      List.of(
          Pattern.compile("([A-Z]+):([0-9]{1,9})"),
          Pattern.compile("URN:(?:X-)?OGC:DEF:CRS:([A-Z]+):[^:]*:([0-9]{1,9})"),
          Pattern.compile("HTTPS?://WWW\\.OPENGIS\\.NET/DEF/CRS/([A-Z]+)/[^/]+/([0-9]{1,9})"));

  private CrsNames() {}

  /**
   * {@return the system of that name, easting or longitude first; empty where the name says
   * nothing}
   *
   * @param name name of a system as a file gives it, in any case
   */
  public static Optional<CrsText> parse(String name) {
    String upper = name.strip().toUpperCase(Locale.ROOT);
    if (upper.endsWith(":CRS84") || upper.endsWith("/CRS84")) {
      return Optional.of(WGS_84);
    }
    for (Pattern pattern : CODES) {
      Matcher code = pattern.matcher(upper);
      if (code.matches()) {
        return Optional.of(CrsText.ofCode(code.group(1) + ":" + code.group(2)));
      }
    }
    return Optional.empty();
  }
}
