package org.meadowmark.core.model;

import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.CoordinateSequenceFactory;
import org.locationtech.jts.geom.CoordinateXY;
import org.locationtech.jts.geom.Envelope;

/**
 * Plane coordinates in one array of numbers, for surveys with millions of shapes.
 *
 * <p>The packed sequences of JTS and GeoTools keep the coordinate objects that were once asked for
 * until memory runs out, which is what is to be saved here; these are made anew each time.
 */
public final class FlatSequence implements CoordinateSequence {
  /** Makes such sequences; heights and measures are dropped. */
  public static final CoordinateSequenceFactory FACTORY = new Factory();

  private final double[] ordinates;

  /**
   * A sequence.
   *
   * @param ordinates x and y of each point in turn; the array is kept, not copied
   */
  public FlatSequence(double[] ordinates) {
    this.ordinates = ordinates;
  }

  private FlatSequence(CoordinateSequence other) {
    this(new double[2 * other.size()]);
    for (int i = 0; i < other.size(); i++) {
      ordinates[2 * i] = other.getX(i);
      ordinates[2 * i + 1] = other.getY(i);
    }
  }

  @Override
  public int getDimension() {
    return 2;
  }

  @Override
  public int getMeasures() {
    return 0;
  }

  @Override
  public Coordinate createCoordinate() {
    return new CoordinateXY();
  }

  @Override
  public Coordinate getCoordinate(int i) {
    return new CoordinateXY(ordinates[2 * i], ordinates[2 * i + 1]);
  }

  @Override
  public Coordinate getCoordinateCopy(int i) {
    return getCoordinate(i);
  }

  @Override
  public void getCoordinate(int i, Coordinate coordinate) {
    coordinate.setX(ordinates[2 * i]);
    coordinate.setY(ordinates[2 * i + 1]);
  }

  @Override
  public double getX(int i) {
    return ordinates[2 * i];
  }

  @Override
  public double getY(int i) {
    return ordinates[2 * i + 1];
  }

  @Override
  public double getOrdinate(int i, int ordinate) {
    return ordinate < 2 ? ordinates[2 * i + ordinate] : Coordinate.NULL_ORDINATE;
  }

  @Override
  public int size() {
    return ordinates.length / 2;
  }

  @Override
  public void setOrdinate(int i, int ordinate, double value) {
    if (ordinate < 2) {
      ordinates[2 * i + ordinate] = value;
    }
  }

  @Override
  public Coordinate[] toCoordinateArray() {
    Coordinate[] coordinates = new Coordinate[size()];
    for (int i = 0; i < coordinates.length; i++) {
      coordinates[i] = getCoordinate(i);
    }
    return coordinates;
  }

  @Override
  public Envelope expandEnvelope(Envelope envelope) {
    for (int i = 0; i < ordinates.length; i += 2) {
      envelope.expandToInclude(ordinates[i], ordinates[i + 1]);
    }
    return envelope;
  }

  @Override
  @Deprecated
  public Object clone() {
    return copy();
  }

  @Override
  public FlatSequence copy() {
    return new FlatSequence(ordinates.clone());
  }

  @Override
  public String toString() {
    return Arrays.toString(ordinates);
  }

  private static final class Factory implements CoordinateSequenceFactory {
    @Override
    public CoordinateSequence create(Coordinate[] coordinates) {
      double[] ordinates = new double[coordinates == null ? 0 : 2 * coordinates.length];
      for (int i = 0; i < ordinates.length / 2; i++) {
        ordinates[2 * i] = coordinates[i].getX();
        ordinates[2 * i + 1] = coordinates[i].getY();
      }
      return new FlatSequence(ordinates);
    }

    @Override
    public CoordinateSequence create(CoordinateSequence sequence) {
      return new FlatSequence(sequence);
    }

    @Override
    public CoordinateSequence create(int size, int dimension) {
      return new FlatSequence(new double[2 * size]);
    }

    @Override
    public CoordinateSequence create(int size, int dimension, int measures) {
      return create(size, dimension);
    }
  }
}
