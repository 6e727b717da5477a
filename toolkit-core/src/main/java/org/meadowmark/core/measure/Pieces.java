package org.meadowmark.core.measure;

import java.util.List;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Polygon;

/**
 * Pieces of grass in one scope: a bed, a management area, the survey.
 *
 * @param patches pieces large enough to count
 * @param crumbs smaller ones
 */
record Pieces(List<Polygon> patches, List<Polygon> crumbs) {
  Pieces {
    patches = List.copyOf(patches);
    crumbs = List.copyOf(crumbs);
  }

  /** Sorts pieces by the smallest area that counts; without any area a piece is a crumb. */
  static Pieces of(List<Polygon> all, double minimumSquareMetres) {
    var bySize =
        all.stream()
            .collect(Collectors.partitioningBy(piece -> counts(piece, minimumSquareMetres)));
    return new Pieces(bySize.get(true), bySize.get(false));
  }

  static boolean counts(Polygon piece, double minimumSquareMetres) {
    double area = piece.getArea();
    return area > 0 && area >= minimumSquareMetres;
  }
}
