package org.meadowmark.core.write.proposal;

/** Angles as mariners write them: degrees, minutes and decimals of a minute. */
final class DegreesMinutes {
  private static final int MINUTES = 60;

  private DegreesMinutes() {}

  /** {@code 27° 45.123′ N}; a thousandth of a minute of latitude is 1.85 m. */
  static String latitude(double degrees, int decimals) {
    return absolute(degrees, decimals, 2) + '\u00A0' + (degrees < 0 ? 'S' : 'N');
  }

  /** {@code 082° 38.040′ W}. */
  static String longitude(double degrees, int decimals) {
    return absolute(degrees, decimals, 3) + '\u00A0' + (degrees < 0 ? 'W' : 'E');
  }

  /** {@code 0° 05′}, without a sign. */
  static String angle(double degrees) {
    long minutes = Math.round(Math.abs(degrees) * MINUTES);
    return minutes / MINUTES + "°\u00A0" + padded(minutes % MINUTES, 2) + "′";
  }

  /** {@code 074°}: a bearing in whole degrees, three digits. */
  static String bearing(double degrees) {
    long whole = Math.floorMod(Math.round(degrees), 360L);
    return padded(whole, 3) + "°";
  }

  private static String absolute(double degrees, int decimals, int width) {
    long parts = Math.round(Math.pow(10, decimals));
    long all = Math.round(Math.abs(degrees) * MINUTES * parts);
    long minutes = all / parts;
    String text = padded(minutes / MINUTES, width) + "°\u00A0" + padded(minutes % MINUTES, 2);
    return text + (decimals == 0 ? "" : "." + padded(all % parts, decimals)) + "′";
  }

  private static String padded(long value, int width) {
    String digits = Long.toString(value);
    return "0".repeat(Math.max(0, width - digits.length())) + digits;
  }
}
