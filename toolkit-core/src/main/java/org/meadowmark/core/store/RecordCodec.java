package org.meadowmark.core.store;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/**
 * Turns records into bytes and back, every bit of every number kept.
 *
 * <p>A record may be made of numbers, truth values, text, dates, enumerations, plane geometries,
 * arrays of numbers, optional values, lists, and other records. The bytes follow from the declared
 * types alone, so they are read by the same version of the program only. Thread-safe.
 */
public final class RecordCodec {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final int MOST_DIMENSIONS = 3;

  /**
   * Texts read before, at their hash: names of files and kinds stand in millions of rows, and are
   * held once. Threads may overwrite each other's, which costs no more than a second copy.
   */
  private static final String[] TEXTS = new String[1 << 12];

  private static final int LONGEST_SHARED_TEXT = 256;

  /** How values of one type are written and read. */
  private interface Codec {
    void write(Object value, DataOutput out) throws IOException;

    Object read(DataInput in) throws IOException;
  }

  private interface Write<T> {
    void write(T value, DataOutput out) throws IOException;
  }

  private interface Read<T> {
    T read(DataInput in) throws IOException;
  }

  private static final Map<Type, Codec> CODECS = new ConcurrentHashMap<>();

  private RecordCodec() {}

  /**
   * Writes a record.
   *
   * @param <T> type of the record
   * @param value the record
   * @param type its class, whose components say how it is written
   * @param out takes the bytes
   * @throws IllegalArgumentException if a component has a type that is not known here
   * @throws IOException if they cannot be written
   */
  public static <T extends Record> void write(T value, Class<T> type, DataOutput out)
      throws IOException {
    codec(type).write(value, out);
  }

  /**
   * Reads a record of the type that was written.
   *
   * @param <T> type of the record
   * @param type its class, the same as when it was written
   * @param in gives the bytes, from the first of the record on
   * @return a record with the same content, every bit of every number kept
   * @throws IOException if the bytes cannot be read or end too early
   */
  public static <T extends Record> T read(Class<T> type, DataInput in) throws IOException {
    return type.cast(codec(type).read(in));
  }

  private static Codec codec(Type type) {
    Codec known = CODECS.get(type);
    if (known == null) {
      known = make(type);
      CODECS.put(type, known);
    }
    return known;
  }

  private static <T> Codec of(Class<T> type, Write<T> write, Read<T> read) {
    return new Codec() {
      @Override
      public void write(Object value, DataOutput out) throws IOException {
        write.write(type.cast(value), out);
      }

      @Override
      public Object read(DataInput in) throws IOException {
        return read.read(in);
      }
    };
  }

  private static Codec make(Type type) {
    if (type instanceof ParameterizedType generic) {
      Codec element = codec(generic.getActualTypeArguments()[0]);
      return generic.getRawType() == Optional.class ? optional(element) : list(element);
    }
    Class<?> raw = (Class<?>) type;
    if (raw == int.class || raw == Integer.class) {
      return of(Integer.class, (v, out) -> out.writeInt(v), DataInput::readInt);
    } else if (raw == long.class) {
      return of(Long.class, (v, out) -> out.writeLong(v), DataInput::readLong);
    } else if (raw == double.class || raw == Double.class) {
      return of(Double.class, (v, out) -> out.writeDouble(v), DataInput::readDouble);
    } else if (raw == boolean.class || raw == Boolean.class) {
      return of(Boolean.class, (v, out) -> out.writeBoolean(v), DataInput::readBoolean);
    } else if (raw == String.class) {
      return of(String.class, RecordCodec::writeText, RecordCodec::readText);
    } else if (raw == LocalDate.class) {
      return of(
          LocalDate.class,
          (v, out) -> out.writeLong(v.toEpochDay()),
          in -> LocalDate.ofEpochDay(in.readLong()));
    } else if (raw == OptionalDouble.class) {
      return of(OptionalDouble.class, RecordCodec::writeOptional, RecordCodec::readOptional);
    } else if (raw == OptionalInt.class) {
      return of(
          OptionalInt.class,
          (v, out) -> {
            out.writeBoolean(v.isPresent());
            out.writeInt(v.orElse(0));
          },
          in -> {
            boolean present = in.readBoolean();
            int value = in.readInt();
            return present ? OptionalInt.of(value) : OptionalInt.empty();
          });
    } else if (raw == double[].class) {
      return of(double[].class, RecordCodec::writeNumbers, RecordCodec::readNumbers);
    } else if (raw == int[].class) {
      return of(int[].class, RecordCodec::writeWholeNumbers, RecordCodec::readWholeNumbers);
    } else if (raw.isEnum()) {
      Object[] constants = raw.getEnumConstants();
      return of(
          Enum.class,
          (v, out) -> out.writeInt(v.ordinal()),
          in -> (Enum<?>) constants[in.readInt()]);
    } else if (Geometry.class.isAssignableFrom(raw)) {
      return of(Geometry.class, RecordCodec::writeGeometry, RecordCodec::readGeometry);
    } else if (raw.isRecord()) {
      return record(raw);
    }
    throw new IllegalArgumentException("no way to write a " + type.getTypeName());
  }

  private static Codec optional(Codec element) {
    return of(
        Optional.class,
        (v, out) -> {
          out.writeBoolean(v.isPresent());
          if (v.isPresent()) {
            element.write(v.get(), out);
          }
        },
        in -> in.readBoolean() ? Optional.of(element.read(in)) : Optional.empty());
  }

  private static Codec list(Codec element) {
    return of(
        List.class,
        (v, out) -> {
          out.writeInt(v.size());
          for (Object each : v) {
            element.write(each, out);
          }
        },
        in -> {
          int size = in.readInt();
          List<Object> list = new ArrayList<>(size);
          for (int i = 0; i < size; i++) {
            list.add(element.read(in));
          }
          return List.copyOf(list);
        });
  }

  private static Codec record(Class<?> raw) {
    RecordComponent[] components = raw.getRecordComponents();
    Codec[] codecs =
        Arrays.stream(components).map(c -> codec(c.getGenericType())).toArray(Codec[]::new);
    Method[] accessors =
        Arrays.stream(components).map(RecordComponent::getAccessor).toArray(Method[]::new);
    Arrays.stream(accessors).forEach(accessor -> accessor.setAccessible(true));
    Constructor<?> constructor;
    try {
      constructor =
          raw.getDeclaredConstructor(
              Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new));
    } catch (NoSuchMethodException e) {
      throw new IllegalStateException(e);
    }
    constructor.setAccessible(true);
    return of(
        Record.class,
        (v, out) -> {
          for (int i = 0; i < codecs.length; i++) {
            codecs[i].write(component(accessors[i], v), out);
          }
        },
        in -> {
          Object[] values = new Object[codecs.length];
          for (int i = 0; i < codecs.length; i++) {
            values[i] = codecs[i].read(in);
          }
          return (Record) made(constructor, values);
        });
  }

  private static Object component(Method accessor, Object value) {
    try {
      return accessor.invoke(value);
    } catch (IllegalAccessException | InvocationTargetException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Object made(Constructor<?> constructor, Object[] values) {
    try {
      return constructor.newInstance(values);
    } catch (InstantiationException | IllegalAccessException | InvocationTargetException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * As UTF-8, but where halves of pairs occur, which that cannot say, as they are: length below 0.
   */
  private static void writeText(String text, DataOutput out) throws IOException {
    if (text.chars().anyMatch(each -> Character.isSurrogate((char) each))) {
      out.writeInt(-text.length());
      out.writeChars(text);
    } else {
      byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
      out.writeInt(bytes.length);
      out.write(bytes);
    }
  }

  private static String readText(DataInput in) throws IOException {
    int length = in.readInt();
    if (length < 0) {
      char[] text = new char[-length];
      for (int i = 0; i < text.length; i++) {
        text[i] = in.readChar();
      }
      return new String(text);
    }
    byte[] bytes = new byte[length];
    in.readFully(bytes);
    String text = new String(bytes, StandardCharsets.UTF_8);
    return length > LONGEST_SHARED_TEXT ? text : shared(text);
  }

  private static String shared(String text) {
    int place = text.hashCode() & (TEXTS.length - 1);
    String known = TEXTS[place];
    if (text.equals(known)) {
      return known;
    }
    TEXTS[place] = text;
    return text;
  }

  private static void writeOptional(OptionalDouble value, DataOutput out) throws IOException {
    out.writeBoolean(value.isPresent());
    out.writeDouble(value.orElse(0));
  }

  private static OptionalDouble readOptional(DataInput in) throws IOException {
    boolean present = in.readBoolean();
    double value = in.readDouble();
    return present ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  private static void writeNumbers(double[] values, DataOutput out) throws IOException {
    out.writeInt(values.length);
    for (double value : values) {
      out.writeDouble(value);
    }
  }

  private static double[] readNumbers(DataInput in) throws IOException {
    double[] values = new double[in.readInt()];
    for (int i = 0; i < values.length; i++) {
      values[i] = in.readDouble();
    }
    return values;
  }

  private static void writeWholeNumbers(int[] values, DataOutput out) throws IOException {
    out.writeInt(values.length);
    for (int value : values) {
      out.writeInt(value);
    }
  }

  private static int[] readWholeNumbers(DataInput in) throws IOException {
    int[] values = new int[in.readInt()];
    for (int i = 0; i < values.length; i++) {
      values[i] = in.readInt();
    }
    return values;
  }

  private enum Shape {
    POINT,
    LINE,
    RING,
    POLYGON,
    POINTS,
    LINES,
    POLYGONS,
    COLLECTION
  }

  private static void writeGeometry(Geometry geometry, DataOutput out) throws IOException {
    Shape shape =
        switch (geometry.getGeometryType()) {
          case Geometry.TYPENAME_POINT -> Shape.POINT;
          case Geometry.TYPENAME_LINESTRING -> Shape.LINE;
          case Geometry.TYPENAME_LINEARRING -> Shape.RING;
          case Geometry.TYPENAME_POLYGON -> Shape.POLYGON;
          case Geometry.TYPENAME_MULTIPOINT -> Shape.POINTS;
          case Geometry.TYPENAME_MULTILINESTRING -> Shape.LINES;
          case Geometry.TYPENAME_MULTIPOLYGON -> Shape.POLYGONS;
          default -> Shape.COLLECTION;
        };
    out.writeByte(shape.ordinal());
    switch (shape) {
      case POINT -> writeSequence(((Point) geometry).getCoordinateSequence(), out);
      case LINE, RING -> writeSequence(((LineString) geometry).getCoordinateSequence(), out);
      case POLYGON -> {
        Polygon polygon = (Polygon) geometry;
        out.writeInt(polygon.isEmpty() ? 0 : 1 + polygon.getNumInteriorRing());
        if (!polygon.isEmpty()) {
          writeSequence(polygon.getExteriorRing().getCoordinateSequence(), out);
          for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
            writeSequence(polygon.getInteriorRingN(i).getCoordinateSequence(), out);
          }
        }
      }
      default -> {
        out.writeInt(geometry.getNumGeometries());
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
          writeGeometry(geometry.getGeometryN(i), out);
        }
      }
    }
  }

  private static Geometry readGeometry(DataInput in) throws IOException {
    Shape shape = Shape.values()[in.readByte()];
    switch (shape) {
      case POINT -> {
        return FACTORY.createPoint(readSequence(in));
      }
      case LINE -> {
        return FACTORY.createLineString(readSequence(in));
      }
      case RING -> {
        return FACTORY.createLinearRing(readSequence(in));
      }
      case POLYGON -> {
        int rings = in.readInt();
        if (rings == 0) {
          return FACTORY.createPolygon();
        }
        LinearRing outline = FACTORY.createLinearRing(readSequence(in));
        LinearRing[] holes = new LinearRing[rings - 1];
        for (int i = 0; i < holes.length; i++) {
          holes[i] = FACTORY.createLinearRing(readSequence(in));
        }
        return FACTORY.createPolygon(outline, holes);
      }
      default -> {
        return readCollection(shape, in);
      }
    }
  }

  private static Geometry readCollection(Shape shape, DataInput in) throws IOException {
    Geometry[] parts = new Geometry[in.readInt()];
    for (int i = 0; i < parts.length; i++) {
      parts[i] = readGeometry(in);
    }
    return switch (shape) {
      case POINTS -> FACTORY.createMultiPoint(Arrays.copyOf(parts, parts.length, Point[].class));
      case LINES ->
          FACTORY.createMultiLineString(Arrays.copyOf(parts, parts.length, LineString[].class));
      case POLYGONS ->
          FACTORY.createMultiPolygon(Arrays.copyOf(parts, parts.length, Polygon[].class));
      default -> FACTORY.createGeometryCollection(parts);
    };
  }

  /** Heights are kept where there are any, measures are not. */
  private static void writeSequence(CoordinateSequence points, DataOutput out) throws IOException {
    boolean heights = points.hasZ();
    out.writeInt(points.size());
    out.writeByte(heights ? MOST_DIMENSIONS : 2);
    for (int i = 0; i < points.size(); i++) {
      out.writeDouble(points.getX(i));
      out.writeDouble(points.getY(i));
      if (heights) {
        out.writeDouble(points.getZ(i));
      }
    }
  }

  private static CoordinateSequence readSequence(DataInput in) throws IOException {
    Coordinate[] points = new Coordinate[in.readInt()];
    int dimensions = in.readByte();
    for (int i = 0; i < points.length; i++) {
      double x = in.readDouble();
      double y = in.readDouble();
      points[i] =
          dimensions == MOST_DIMENSIONS
              ? new Coordinate(x, y, in.readDouble())
              : new Coordinate(x, y);
    }
    return FACTORY.getCoordinateSequenceFactory().create(points);
  }
}
