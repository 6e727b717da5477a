package org.meadowmark.core.write;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A row of {@code gpkg_spatial_ref_sys}.
 *
 * @param name name for people
 * @param srsId key inside the file
 * @param organization authority
 * @param organizationCode the authority's number
 * @param wkt well-known text, version 1
 */
record GeoPackageCrs(
    String name, int srsId, String organization, int organizationCode, String wkt) {

  private static final Pattern CODE = Pattern.compile("([A-Za-z][A-Za-z0-9_-]*):([0-9]{1,9})");
  private static final Pattern WKT_NAME =
      Pattern.compile("\\A\\s*[A-Za-z_]+\\s*\\[\\s*\"([^\"]+)\"");

  /** Keys from here on are free for systems that EPSG does not list. */
  private static final int OTHER_SRS_ID = 100_000;

  private static final String WGS_84_WKT =
      "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563,"
          + "AUTHORITY[\"EPSG\",\"7030\"]],AUTHORITY[\"EPSG\",\"6326\"]],"
          + "PRIMEM[\"Greenwich\",0,AUTHORITY[\"EPSG\",\"8901\"]],"
          + "UNIT[\"degree\",0.0174532925199433,AUTHORITY[\"EPSG\",\"9122\"]],"
          + "AXIS[\"Latitude\",NORTH],AXIS[\"Longitude\",EAST],AUTHORITY[\"EPSG\",\"4326\"]]";

  /** The rows that every GeoPackage has (requirement 11 of the standard). */
  static final List<GeoPackageCrs> REQUIRED =
      List.of(
          new GeoPackageCrs("Undefined Cartesian SRS", -1, "NONE", -1, "undefined"),
          new GeoPackageCrs("Undefined geographic SRS", 0, "NONE", 0, "undefined"),
          new GeoPackageCrs("WGS 84 geodetic", 4326, "EPSG", 4326, WGS_84_WKT));

  /** A system by its code; one that is not {@code AUTHORITY:NUMBER} is known by its text alone. */
  static GeoPackageCrs of(String code, String wkt) {
    Matcher wktName = WKT_NAME.matcher(wkt);
    String name = wktName.find() ? wktName.group(1) : code;
    Matcher parts = CODE.matcher(code);
    if (!parts.matches()) {
      return new GeoPackageCrs(name, OTHER_SRS_ID, "NONE", OTHER_SRS_ID, wkt);
    }
    String organization = parts.group(1).toUpperCase(Locale.ROOT);
    int number = Integer.parseInt(parts.group(2));
    int srsId = organization.equals("EPSG") ? number : OTHER_SRS_ID;
    return new GeoPackageCrs(name, srsId, organization, number, wkt);
  }
}
