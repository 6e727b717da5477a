package org.meadowmark.core.rank.zone.choice;

/**
 * Prices that stand for the limits.
 *
 * @param perMetre price of a metre of zone
 * @param perZone price of a zone
 */
record Prices(double perMetre, double perZone) {
  double budget(double metres, int zones) {
    return perMetre * metres + perZone * zones;
  }
}
