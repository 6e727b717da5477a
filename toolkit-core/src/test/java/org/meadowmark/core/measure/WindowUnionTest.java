package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** Checked against the robust overlays of JTS, which unite two by two and check every node. */
class WindowUnionTest {
  private static final double EAST = 340_000;
  private static final double NORTH = 3_070_000;
  private static final Envelope WINDOW = new Envelope(EAST + 5, EAST + 35, NORTH + 5, NORTH + 35);

  private final GeometryFactory factory = new GeometryFactory();

  /** Bent strips that cross each other and themselves, many of them far beyond the window. */
  private List<Geometry> strips(long seed, int count) {
    Random random = new Random(seed);
    List<Geometry> strips = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Coordinate[] line = new Coordinate[6];
      double x = EAST + 40 * random.nextDouble();
      double y = NORTH + 40 * random.nextDouble();
      double heading = 2 * Math.PI * random.nextDouble();
      for (int j = 0; j < line.length; j++) {
        line[j] = new Coordinate(x, y);
        heading += random.nextGaussian();
        x += 6 * random.nextDouble() * Math.cos(heading);
        y += 6 * random.nextDouble() * Math.sin(heading);
      }
      strips.add(factory.createLineString(line).buffer(0.1 + 0.2 * random.nextDouble()));
    }
    return strips;
  }

  private Geometry inWindow(Geometry geometry) {
    return OverlayNGRobust.overlay(geometry, factory.toGeometry(WINDOW), OverlayNG.INTERSECTION);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void itIsTheUnionInTheWindow(long seed) {
    List<Geometry> strips = strips(seed, 150);

    Geometry united = WindowUnion.of(strips, WINDOW, factory);

    Geometry expected = inWindow(OverlayNGRobust.union(strips));
    Geometry apart = OverlayNGRobust.overlay(expected, inWindow(united), OverlayNG.SYMDIFFERENCE);
    assertThat(apart.getArea()).isLessThan(1e-6);
    assertThat(inWindow(united).getArea())
        .isCloseTo(expected.getArea(), within(1e-9 * expected.getArea()));
    assertThat(united.getEnvelopeInternal().getWidth())
        .as("what lies outside the window is cut off")
        .isLessThanOrEqualTo(WINDOW.getWidth());
  }

  @Test
  void polygonsThatTouchOrRepeatAreOne() {
    Geometry left = factory.toGeometry(new Envelope(EAST + 10, EAST + 12, NORTH + 10, NORTH + 12));
    Geometry right = factory.toGeometry(new Envelope(EAST + 12, EAST + 15, NORTH + 10, NORTH + 12));

    Geometry united = WindowUnion.of(List.of(left, right, left.copy()), WINDOW, factory);

    assertThat(united.getNumGeometries()).isEqualTo(1);
    assertThat(united.getArea()).isEqualTo(10);
  }

  @Test
  void aHoleThatTheWindowCutsStaysOpen() {
    Geometry ring =
        factory
            .toGeometry(new Envelope(EAST, EAST + 20, NORTH, NORTH + 20))
            .difference(
                factory.toGeometry(new Envelope(EAST + 2, EAST + 18, NORTH + 2, NORTH + 18)));
    Geometry bar = factory.toGeometry(new Envelope(EAST + 10, EAST + 11, NORTH, NORTH + 20));

    Geometry united = inWindow(WindowUnion.of(List.of(ring, bar), WINDOW, factory));

    assertThat(united.getArea()).isCloseTo(2 * (15 + 13) + 13, within(1e-8));
  }

  @ParameterizedTest
  @ValueSource(longs = {5, 6, 7})
  void aCutLeavesWhatRobustOverlaysLeave(long seed) {
    Geometry cutter = OverlayNGRobust.union(strips(seed, 150));
    Geometry shape =
        OverlayNGRobust.overlay(
            factory.createPoint(new Coordinate(EAST + 20, NORTH + 20)).buffer(18),
            factory.createPoint(new Coordinate(EAST + 26, NORTH + 20)).buffer(4),
            OverlayNG.DIFFERENCE);

    ShapeCut cut = ShapeCut.of(shape, cutter);

    Geometry left = OverlayNGRobust.overlay(shape, cutter, OverlayNG.DIFFERENCE);
    Geometry cutOut = OverlayNGRobust.overlay(shape, cutter, OverlayNG.INTERSECTION);
    assertThat(cut.left()).hasSize(left.getNumGeometries());
    assertThat(cut.cutOut()).hasSize(cutOut.getNumGeometries());
    assertThat(area(cut.left())).isCloseTo(left.getArea(), within(1e-7));
    assertThat(area(cut.cutOut())).isCloseTo(cutOut.getArea(), within(1e-7));
  }

  private static double area(List<? extends Geometry> parts) {
    return parts.stream().mapToDouble(Geometry::getArea).sum();
  }
}
