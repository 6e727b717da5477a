package org.meadowmark.samples;

/**
 * Typical scars of a cause. Shares, medians and spreads are invented to look natural (a propeller
 * scar of about 0.4 m is common practice, no source); they are not findings about any place.
 */
enum CauseKind {
  PROPELLER("propeller", 0.71, 0.40, 0.25, 26, 0.90, 2, 150),
  ANCHOR("anchor", 0.08, 0.25, 0.35, 5, 0.60, 2, 25),
  HULL("hull", 0.07, 1.10, 0.30, 14, 0.60, 3, 60),
  GROUNDING("grounding", 0.04, 6, 0.35, 14, 0.35, 6, 35),
  UNKNOWN("unknown", 0.10, 0.45, 0.40, 11, 0.80, 2, 90);

  final String key;
  final double share;
  final double medianWidthMetres;
  final double widthLogDeviation;
  final double medianLengthMetres;
  final double lengthLogDeviation;
  final double shortestMetres;
  final double longestMetres;

  CauseKind(
      String key,
      double share,
      double medianWidthMetres,
      double widthLogDeviation,
      double medianLengthMetres,
      double lengthLogDeviation,
      double shortestMetres,
      double longestMetres) {
    this.key = key;
    this.share = share;
    this.medianWidthMetres = medianWidthMetres;
    this.widthLogDeviation = widthLogDeviation;
    this.medianLengthMetres = medianLengthMetres;
    this.lengthLogDeviation = lengthLogDeviation;
    this.shortestMetres = shortestMetres;
    this.longestMetres = longestMetres;
  }

  static CauseKind draw(Draws draws) {
    double remaining = draws.uniform();
    for (CauseKind kind : values()) {
      remaining -= kind.share;
      if (remaining < 0) {
        return kind;
      }
    }
    return UNKNOWN;
  }

  double drawWidth(Draws draws) {
    double width =
        draws.lognormal(
            medianWidthMetres, widthLogDeviation, medianWidthMetres / 4, medianWidthMetres * 4);
    return Math.rint(width * 100) / 100;
  }

  double drawLength(Draws draws) {
    return draws.lognormal(medianLengthMetres, lengthLogDeviation, shortestMetres, longestMetres);
  }
}
