package org.meadowmark.core.measure.uncertainty;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.index.hprtree.HPRtree;

/** All scars with their errors, by place. Thread-safe once built. */
final class ScarLayer {
  /** A shift longer than this many standard deviations has the probability exp(−8) = 0.03 %. */
  private static final double SHIFT_REACH = 4;

  /** A normal deviate above this has the probability 0.13 %. */
  private static final double WIDTH_REACH = 3;

  private final List<UncertainScar> scars;
  private final List<ErrorDraws> errors;
  private final double[] shiftDeviations;
  private final double[] halfWidthReaches;
  private final HPRtree index = new HPRtree();
  private final double longestShift;
  private final double longestHalfWidth;

  ScarLayer(List<UncertainScar> scars, ErrorModel model) {
    this.scars = List.copyOf(scars);
    this.errors = scars.stream().map(scar -> new ErrorDraws(scar, model)).toList();
    shiftDeviations = errors.stream().mapToDouble(ErrorDraws::shiftDeviation).toArray();
    halfWidthReaches = new double[scars.size()];
    double shift = 0;
    double half = 0;
    for (int i = 0; i < scars.size(); i++) {
      index.insert(scars.get(i).geometry().getEnvelopeInternal(), i);
      halfWidthReaches[i] =
          scars.get(i).gridWidthMetres() / 2 * Math.max(1, errors.get(i).factorAt(WIDTH_REACH));
      shift = Math.max(shift, shiftDeviations[i]);
      half = Math.max(half, halfWidthReaches[i]);
    }
    index.build();
    longestShift = shift;
    longestHalfWidth = half;
  }

  UncertainScar scar(int scar) {
    return scars.get(scar);
  }

  ErrorDraws errors(int scar) {
    return errors.get(scar);
  }

  boolean anyShift() {
    return longestShift > 0;
  }

  /** How far a scar may reach from its line or outline to a fixed thing. */
  double reach(int scar) {
    return SHIFT_REACH * shiftDeviations[scar] + halfWidthReaches[scar];
  }

  /** How far apart two scars may be, line to line, and still overlap. */
  double reach(int scar, int other) {
    return SHIFT_REACH * together(shiftDeviations[scar], shiftDeviations[other])
        + halfWidthReaches[scar]
        + halfWidthReaches[other];
  }

  private static double together(double deviation, double other) {
    return Math.sqrt(deviation * deviation + other * other);
  }

  /** Scars that may reach into an envelope, in order of place. */
  List<Integer> reaching(Envelope envelope) {
    return within(envelope, SHIFT_REACH * longestShift + longestHalfWidth).stream()
        .filter(
            scar -> {
              Envelope own = new Envelope(scars.get(scar).geometry().getEnvelopeInternal());
              own.expandBy(reach(scar));
              return own.intersects(envelope);
            })
        .toList();
  }

  /** Other scars that may overlap a scar, in order of place. */
  List<Integer> meeting(int scar) {
    Envelope own = scars.get(scar).geometry().getEnvelopeInternal();
    double shift = SHIFT_REACH * together(shiftDeviations[scar], longestShift);
    return within(own, shift + halfWidthReaches[scar] + longestHalfWidth).stream()
        .filter(
            other -> {
              if (other == scar) {
                return false;
              }
              Envelope around = new Envelope(scars.get(other).geometry().getEnvelopeInternal());
              around.expandBy(reach(scar, other));
              return around.intersects(own);
            })
        .toList();
  }

  private List<Integer> within(Envelope envelope, double distance) {
    Envelope around = new Envelope(envelope);
    around.expandBy(distance);
    List<Integer> found = new ArrayList<>();
    index.query(around, scar -> found.add((Integer) scar));
    found.sort(null);
    return found;
  }

  /** The pieces of a scar. */
  List<Cover> covers(int scar, int place) {
    Geometry geometry = scars.get(scar).geometry();
    if (geometry.getDimension() == 2) {
      return List.of(new Cover.Area(place, geometry));
    }
    double width = scars.get(scar).gridWidthMetres();
    List<Cover> covers = new ArrayList<>();
    for (int part = 0; part < geometry.getNumGeometries(); part++) {
      List<Coordinate> line = withoutRepeats(geometry.getGeometryN(part).getCoordinates());
      for (int i = 1; i < line.size(); i++) {
        covers.add(
            new Cover.Strip(
                place, line.get(i - 1), line.get(i), width, i > 1, i < line.size() - 1));
      }
    }
    return covers;
  }

  private static List<Coordinate> withoutRepeats(Coordinate[] coordinates) {
    List<Coordinate> line = new ArrayList<>();
    for (Coordinate coordinate : coordinates) {
      if (line.isEmpty() || !line.get(line.size() - 1).equals2D(coordinate)) {
        line.add(coordinate);
      }
    }
    return line;
  }
}
