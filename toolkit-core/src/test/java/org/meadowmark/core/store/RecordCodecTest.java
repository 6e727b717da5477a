package org.meadowmark.core.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

class RecordCodecTest {
  private enum Kind {
    ONE,
    OTHER
  }

  private record Inner(String name, List<Integer> numbers) {}

  private record Outer(
      int whole,
      long large,
      double number,
      boolean is,
      String text,
      LocalDate date,
      Kind kind,
      OptionalDouble maybeNumber,
      OptionalInt maybeWhole,
      Optional<Inner> maybeInner,
      List<Inner> inners) {}

  private record Arrays2(double[] numbers, int[] wholes) {}

  private record Shape(Geometry geometry) {}

  private record Text(String text) {}

  private record Unknown(Random random) {}

  private static <T extends Record> byte[] bytes(Class<T> type, T value) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    RecordCodec.write(value, type, new DataOutputStream(bytes));
    return bytes.toByteArray();
  }

  private static <T extends Record> T read(Class<T> type, byte[] bytes) throws IOException {
    DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes));
    T value = RecordCodec.read(type, in);
    assertThat(in.read()).as("nothing is left").isNegative();
    return value;
  }

  private static <T extends Record> T again(Class<T> type, T value) throws IOException {
    return read(type, bytes(type, value));
  }

  @Property(tries = 300)
  void everyValueComesBack(
      @ForAll int whole,
      @ForAll long large,
      @ForAll double number,
      @ForAll boolean is,
      @ForAll String text,
      @ForAll Kind kind,
      @ForAll @Size(max = 4) List<String> names)
      throws IOException {
    List<Inner> inners = names.stream().map(name -> new Inner(name, List.of(whole, 1))).toList();
    Outer value =
        new Outer(
            whole,
            large,
            number,
            is,
            text,
            LocalDate.ofEpochDay(whole % 1_000_000),
            kind,
            is ? OptionalDouble.of(-number) : OptionalDouble.empty(),
            is ? OptionalInt.empty() : OptionalInt.of(whole),
            inners.stream().findFirst(),
            inners);
    assertThat(again(Outer.class, value)).isEqualTo(value);
  }

  /** Halves of pairs of characters, which files of invented names can have. */
  @Property(tries = 300)
  void textsThatAreNoUnicodeComeBackToo(
      @ForAll @StringLength(max = 6) @CharRange(from = '\uD7FE', to = '\uE001') String text)
      throws IOException {
    assertThat(again(Text.class, new Text(text)).text()).isEqualTo(text);
  }

  private static long[] bits(double... numbers) {
    return Arrays.stream(numbers).mapToLong(Double::doubleToRawLongBits).toArray();
  }

  @Example
  void everyBitOfANumberIsKept() throws IOException {
    double[] numbers = {
      -0.0, Double.MIN_VALUE, Double.MAX_VALUE, Double.NEGATIVE_INFINITY, Double.NaN, 0.1 + 0.2
    };
    Arrays2 back = again(Arrays2.class, new Arrays2(numbers, new int[] {Integer.MIN_VALUE, 7}));
    assertThat(bits(back.numbers())).containsExactly(bits(numbers));
    assertThat(back.wholes()).containsExactly(Integer.MIN_VALUE, 7);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "POINT (1 2)",
        "POINT EMPTY",
        "LINESTRING (1 2, 3.25 4, 5 6)",
        "LINEARRING (0 0, 1 0, 1 1, 0 0)",
        "POLYGON ((0 0, 9 0, 9 9, 0 0), (5 1, 5 2, 6 2, 5 1))",
        "POLYGON EMPTY",
        "MULTIPOINT ((1 2), (3 4))",
        "MULTILINESTRING ((1 2, 3 4), (5 6, 7 8))",
        "MULTIPOLYGON (((0 0, 1 0, 1 1, 0 0)), ((5 5, 6 5, 6 6, 5 5)))",
        "GEOMETRYCOLLECTION (POINT (1 2), LINESTRING (1 2, 3 4))",
        "GEOMETRYCOLLECTION EMPTY",
      })
  void everyKindOfGeometryComesBack(String text) throws IOException, ParseException {
    Geometry geometry = new WKTReader().read(text);
    Geometry back = again(Shape.class, new Shape(geometry)).geometry();
    assertThat(back.getGeometryType()).isEqualTo(geometry.getGeometryType());
    assertThat(back.equalsExact(geometry)).isTrue();
    assertThat(back.toText()).isEqualTo(geometry.toText());
  }

  @Example
  void heightsAreKept() throws IOException {
    Geometry line =
        new GeometryFactory()
            .createLineString(new Coordinate[] {new Coordinate(1, 2, 3), new Coordinate(4, 5, 6)});
    Geometry back = again(Shape.class, new Shape(line)).geometry();
    assertThat(back.getCoordinates()[1].getZ()).isEqualTo(6);
  }

  /** Millions of rows name the same file; long texts are not kept for others to share. */
  @Example
  void textsThatRepeatAreOneObject() throws IOException {
    byte[] bytes = bytes(Text.class, new Text("beds.gpkg"));
    assertThat(read(Text.class, bytes).text()).isSameAs(read(Text.class, bytes).text());
    byte[] large = bytes(Text.class, new Text("x".repeat(257)));
    assertThat(read(Text.class, large).text()).isNotSameAs(read(Text.class, large).text());
  }

  @Example
  void bytesThatEndTooEarlyAreRefused() throws IOException {
    byte[] bytes = bytes(Text.class, new Text("a name"));
    for (int length = 0; length < bytes.length; length++) {
      byte[] cut = Arrays.copyOf(bytes, length);
      assertThatThrownBy(() -> read(Text.class, cut)).isInstanceOf(EOFException.class);
    }
  }

  @Example
  void aTypeThatItDoesNotKnowIsRefused() {
    assertThatThrownBy(() -> bytes(Unknown.class, new Unknown(new Random(1))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("java.util.Random");
  }
}
