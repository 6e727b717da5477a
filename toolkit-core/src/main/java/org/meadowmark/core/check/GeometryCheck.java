package org.meadowmark.core.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.CoordinateSequenceFilter;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryCollection;
import org.locationtech.jts.geom.Lineal;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.Polygonal;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.valid.IsSimpleOp;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;
import org.meadowmark.core.model.FindingCode;

/**
 * Brings the geometry of a feature to what its layer needs: the right kind, finite, with an extent,
 * valid.
 *
 * <p>Takes the parts of the allowed kinds out of a geometry collection, polygons before lines where
 * both are allowed; drops parts without an extent; repairs invalid polygons with {@link
 * GeometryFixer}, which keeps vertices and fills every area that any ring encloses an odd number of
 * times; lists lines that cross themselves but leaves them as they are, since footprints count
 * crossing parts once. Consecutive repeated points stay: they change no length and no area.
 */
final class GeometryCheck {
  /** Kinds of geometry that a layer can hold. */
  enum Kind {
    POLYGONS("a polygon"),
    LINES("a line"),
    LINES_OR_POLYGONS("a line or a polygon"),
    POINTS("a point");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    boolean takes(Geometry part) {
      return switch (this) {
        case POLYGONS -> part instanceof Polygonal;
        case LINES -> part instanceof Lineal;
        case LINES_OR_POLYGONS -> part instanceof Polygonal || part instanceof Lineal;
        case POINTS -> part.getDimension() == 0;
      };
    }
  }

  /** The way around the earth is 40 thousand million millimetres. */
  private static final double FARTHEST = 1e12;

  private static final String LEFT_OUT = "feature left out";

  private final Kind kind;

  GeometryCheck(Kind kind) {
    this.kind = kind;
  }

  /** The usable geometry, or empty where the feature must be left out; remarks say why. */
  Optional<Geometry> check(Optional<Geometry> read, FeatureRemarks remarks) {
    if (read.isEmpty()) {
      remarks.skipped(FindingCode.NULL_GEOMETRY, "the feature has no geometry", LEFT_OUT);
      return Optional.empty();
    }
    Geometry geometry = read.get();
    if (geometry.isEmpty()) {
      remarks.skipped(FindingCode.EMPTY_GEOMETRY, "the geometry is empty", LEFT_OUT);
      return Optional.empty();
    }
    if (!isFinite(geometry)) {
      remarks.skipped(
          FindingCode.NON_FINITE_COORDINATE,
          "a coordinate is not a finite number",
          LEFT_OUT + "; correct the coordinate in the file");
      return Optional.empty();
    }
    if (!isOnAnyMap(geometry)) {
      remarks.skipped(
          FindingCode.OUTSIDE_CRS_DOMAIN,
          "a coordinate is beyond any map",
          LEFT_OUT + "; correct the coordinate in the file");
      return Optional.empty();
    }
    return ofKind(geometry, remarks).flatMap(g -> withExtent(g, remarks));
  }

  private Optional<Geometry> ofKind(Geometry geometry, FeatureRemarks remarks) {
    if (kind.takes(geometry)) {
      return Optional.of(geometry);
    }
    if (geometry.getClass() == GeometryCollection.class) {
      return fromCollection(geometry, remarks);
    }
    String why =
        kind == Kind.LINES_OR_POLYGONS && geometry.getDimension() == 0
            ? "a point has no extent; " + LEFT_OUT
            : LEFT_OUT;
    remarks.skipped(
        FindingCode.WRONG_GEOMETRY_TYPE,
        "a " + geometry.getGeometryType() + " where the layer needs " + kind.words,
        why);
    return Optional.empty();
  }

  private Optional<Geometry> fromCollection(Geometry collection, FeatureRemarks remarks) {
    List<Geometry> parts = new ArrayList<>();
    collectParts(collection, parts);
    List<Geometry> usable = parts.stream().filter(kind::takes).toList();
    if (usable.stream().anyMatch(Polygon.class::isInstance)) {
      usable = usable.stream().filter(Polygon.class::isInstance).toList();
    }
    if (usable.isEmpty()) {
      remarks.skipped(
          FindingCode.WRONG_GEOMETRY_TYPE, "a GeometryCollection without " + kind.words, LEFT_OUT);
      return Optional.empty();
    }
    remarks.repaired(
        FindingCode.WRONG_GEOMETRY_TYPE,
        "a GeometryCollection where the layer needs " + kind.words,
        String.format(
            Locale.ROOT,
            "%d of its %d parts used (%s)",
            usable.size(),
            parts.size(),
            usable.get(0).getGeometryType()));
    return Optional.of(collection.getFactory().buildGeometry(usable));
  }

  private static void collectParts(Geometry geometry, List<Geometry> parts) {
    if (geometry instanceof GeometryCollection) {
      for (int i = 0; i < geometry.getNumGeometries(); i++) {
        collectParts(geometry.getGeometryN(i), parts);
      }
    } else if (!geometry.isEmpty()) {
      parts.add(geometry);
    }
  }

  private Optional<Geometry> withExtent(Geometry geometry, FeatureRemarks remarks) {
    return switch (geometry.getDimension()) {
      case 2 -> validPolygons(geometry, remarks);
      case 1 -> linesWithLength(geometry, remarks);
      default -> Optional.of(geometry);
    };
  }

  private Optional<Geometry> linesWithLength(Geometry geometry, FeatureRemarks remarks) {
    List<Geometry> parts = new ArrayList<>(geometry.getNumGeometries());
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      Geometry part = geometry.getGeometryN(i);
      if (part.getLength() > 0) {
        parts.add(part);
      }
    }
    if (parts.isEmpty()) {
      remarks.skipped(FindingCode.ZERO_LENGTH, "the line has no length", LEFT_OUT);
      return Optional.empty();
    }
    Geometry lines = geometry;
    int dropped = geometry.getNumGeometries() - parts.size();
    if (dropped > 0) {
      remarks.repaired(
          FindingCode.ZERO_LENGTH, dropped + " part(s) of the line have no length", "left out");
      lines = geometry.getFactory().buildGeometry(parts);
    }
    if (lines.getNumPoints() > 2 && !new IsSimpleOp(lines).isSimple()) {
      remarks.note(
          FindingCode.SELF_CROSSING,
          "the line crosses or touches itself",
          kind == Kind.LINES
              ? "used as it is; it is cut where it crosses, so that segments meet there"
              : "used as it is; crossing parts count once in area, each in length");
    }
    return Optional.of(lines);
  }

  private static Optional<Geometry> validPolygons(Geometry geometry, FeatureRemarks remarks) {
    TopologyValidationError error = new IsValidOp(geometry).getValidationError();
    Geometry valid = geometry;
    if (error != null) {
      try {
        valid = new GeometryFixer(geometry).getResult();
      } catch (TopologyException | IllegalArgumentException e) {
        remarks.skipped(
            FindingCode.INVALID_POLYGON,
            "the polygon is invalid (" + describe(error) + ") and cannot be repaired",
            LEFT_OUT + "; correct it in the file");
        return Optional.empty();
      }
    }
    if (!(valid.getArea() > 0) || !(valid instanceof Polygonal)) {
      remarks.skipped(FindingCode.ZERO_LENGTH, "the polygon has no area", LEFT_OUT);
      return Optional.empty();
    }
    if (error != null) {
      remarks.repaired(
          FindingCode.INVALID_POLYGON,
          "the polygon is invalid: " + describe(error),
          "repaired; " + areaChange(geometry.getArea(), valid.getArea()));
    }
    return Optional.of(valid);
  }

  private static String describe(TopologyValidationError error) {
    Coordinate at = error.getCoordinate();
    String what = error.getMessage().toLowerCase(Locale.ROOT);
    return at == null ? what : what + " at " + at.getX() + " " + at.getY();
  }

  /** The area of an invalid polygon is the one its rings enclose with their signs. */
  static String areaChange(double before, double after) {
    if (!(before > 0)) {
      return "its rings enclosed no area with their signs";
    }
    return String.format(Locale.ROOT, "its area changes by %+.3f %%", 100 * (after / before - 1));
  }

  /** Sums and products of larger numbers, as in areas, soon have no digit that is right. */
  private static boolean isOnAnyMap(Geometry geometry) {
    Envelope envelope = geometry.getEnvelopeInternal();
    return Math.abs(envelope.getMinX()) <= FARTHEST
        && Math.abs(envelope.getMaxX()) <= FARTHEST
        && Math.abs(envelope.getMinY()) <= FARTHEST
        && Math.abs(envelope.getMaxY()) <= FARTHEST;
  }

  private static boolean isFinite(Geometry geometry) {
    FiniteFilter filter = new FiniteFilter();
    geometry.apply(filter);
    return filter.finite;
  }

  private static final class FiniteFilter implements CoordinateSequenceFilter {
    private boolean finite = true;

    @Override
    public void filter(CoordinateSequence sequence, int i) {
      finite = Double.isFinite(sequence.getX(i)) && Double.isFinite(sequence.getY(i));
    }

    @Override
    public boolean isDone() {
      return !finite;
    }

    @Override
    public boolean isGeometryChanged() {
      return false;
    }
  }
}
