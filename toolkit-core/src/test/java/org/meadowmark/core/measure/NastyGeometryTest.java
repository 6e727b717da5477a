package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.meadowmark.core.TestSurvey;

/**
 * Shapes that overlay arithmetic finds hard: spikes, nearly coincident edges, scars twice, scars
 * along the edge of a bed, noise of a ten-millionth, far from the origin. Never an exception, and
 * no area made or lost.
 */
class NastyGeometryTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final double NOISE = 1e-7;
  private static final int SEEDS_A_RUN = 60;

  @ParameterizedTest
  @ValueSource(longs = {0, 1, 2, 3, 4})
  void areasAddUpWhateverTheShapes(long block) {
    List<String> failures = new ArrayList<>();
    for (long i = 0; i < SEEDS_A_RUN; i++) {
      long seed = block * SEEDS_A_RUN + i;
      TestSurvey survey = survey(new Random(seed));
      try {
        check(survey.measure());
      } catch (RuntimeException | AssertionError e) {
        failures.add("seed " + seed + ": " + e);
      }
    }
    assertThat(failures).isEmpty();
  }

  private static void check(Measurement result) {
    for (BedMeasure bed : result.beds()) {
      double grass = bed.damage().grassSquareMetres();
      assertThat(bed.damage().scarredSquareMetres()).isBetween(0.0, grass * (1 + 1e-9));
      assertThat(
              bed.damage().scarredSquareMetres() + bed.fragmentation().after().patchSquareMetres())
          .as("scarred + left of bed " + bed.bed().id())
          .isCloseTo(grass, within(1e-6 * grass));
    }
    Fragmentation whole = result.whole().fragmentation();
    checkMesh(whole.before(), whole.totalSquareMetres());
    checkMesh(whole.after(), whole.totalSquareMetres());
    if (result.beds().size() == 1) {
      assertThat(whole.after().patchSquareMetres() + result.whole().damage().scarredSquareMetres())
          .isCloseTo(whole.totalSquareMetres(), within(1e-6 * whole.totalSquareMetres()));
    }
    double inAreas =
        result.areas().stream()
            .limit(result.areas().size() - 1)
            .mapToDouble(area -> area.fragmentation().after().patchSquareMetres())
            .sum();
    assertThat(inAreas)
        .as("area and outside")
        .isCloseTo(whole.after().patchSquareMetres(), within(1e-6 * whole.totalSquareMetres()));
    assertThat(result.patches()).allSatisfy(p -> assertThat(p.areaSquareMetres()).isPositive());
  }

  private static void checkMesh(PatchStatistics patches, double total) {
    double size = patches.mesh().squareMetres().getAsDouble();
    assertThat(total * (1 - patches.mesh().division().getAsDouble()))
        .isCloseTo(size, within(1e-9 * total));
    assertThat(size).isBetween(0.0, total * (1 + 1e-9));
  }

  private static TestSurvey survey(Random random) {
    double offset = random.nextBoolean() ? 1e6 : 0;
    AffineTransformation move = AffineTransformation.translationInstance(offset, 3 * offset);
    TestSurvey survey = new TestSurvey().minimumPatch(0);
    List<Geometry> beds = beds(random);
    for (int i = 0; i < beds.size(); i++) {
      Geometry bed = move.transform(beds.get(i));
      survey.bed("b" + i, bed.isValid() ? bed : GeometryFixer.fix(bed));
    }
    Geometry first = survey.beds().get(0).geometry();
    List<Geometry> scars = scars(first, random);
    for (int i = 0; i < scars.size(); i++) {
      Geometry scar = scars.get(i);
      survey.scar(
          "s" + i,
          scar,
          new double[] {0.05, 0.4, 0.4, 3, 1e-6}[random.nextInt(5)],
          scar.getDimension() == 2 ? "grounding" : "propeller");
    }
    Coordinate centre = first.getEnvelopeInternal().centre();
    survey.area(
        "a",
        TestSurvey.box(
            centre.x - 1_000, centre.y - 1_000, centre.x + noise(random), centre.y + 1_000));
    return survey;
  }

  private static List<Geometry> beds(Random random) {
    return switch (random.nextInt(7)) {
      case 0 -> List.of(star(random, 100, 1e-4));
      case 1 -> List.of(comb(random, 12, 1e-6));
      case 2 -> List.of(star(random, 8, 0.9).buffer(0.5).difference(star(random, 40, 0.3)));
      case 3 -> {
        // Side by side, with edges that almost agree.
        double edge = 30 + noise(random);
        yield List.of(
            polygon(0, 0, 30, 0, 30, 20, 30 + noise(random), 40, 0, 40),
            polygon(edge, 0, 60, 0, 60, 40, 30, 40, 30 + noise(random), 13));
      }
      case 4 -> {
        // A bed in the hole of another, not quite of its size.
        Geometry outer = polygon(0, 0, 50, 0, 50, 50, 0, 50);
        Geometry hole = star(random, 30, 0.5);
        Geometry inner = AffineTransformation.scaleInstance(1 - NOISE, 1 - NOISE).transform(hole);
        yield List.of(
            outer.difference(AffineTransformation.translationInstance(25, 25).transform(hole)),
            AffineTransformation.translationInstance(25, 25).transform(inner));
      }
      case 5 -> {
        // Jagged neighbours with a sliver of less than the tolerance between them, or a thin
        // overlap.
        int steps = 20;
        double[] left = new double[2 * steps + 4];
        double[] right = new double[2 * steps + 4];
        for (int i = 0; i < steps; i++) {
          double x = 20 + 3 * random.nextDouble();
          left[2 * i] = x;
          right[2 * i] = x + 0.09 * (random.nextDouble() - 0.3);
          left[2 * i + 1] = 2.0 * i;
          right[2 * i + 1] = 2.0 * i + 0.05 * random.nextDouble();
        }
        System.arraycopy(new double[] {0, 2.0 * steps, 0, 0}, 0, left, 2 * steps, 4);
        System.arraycopy(new double[] {50, 2.0 * steps, 50, 0}, 0, right, 2 * steps, 4);
        yield List.of(polygon(left), polygon(right));
      }
      default -> List.of(comb(random, 5, 0.05), star(random, 60, 0.01));
    };
  }

  /** Radii jump between a share of 20 m and 20 m: spikes as thin as the share is small. */
  private static Geometry star(Random random, int corners, double least) {
    double[] ordinates = new double[2 * corners];
    for (int i = 0; i < corners; i++) {
      double radius = 20 * (random.nextInt(3) == 0 ? least : 0.3 + 0.7 * random.nextDouble());
      double angle = 2 * Math.PI * i / corners;
      ordinates[2 * i] = radius * Math.cos(angle) + noise(random);
      ordinates[2 * i + 1] = radius * Math.sin(angle) + noise(random);
    }
    return polygon(ordinates);
  }

  /** Teeth that almost touch each other. */
  private static Geometry comb(Random random, int teeth, double slit) {
    List<Double> ordinates = new ArrayList<>(List.of(0.0, -5.0));
    for (int i = 0; i < teeth; i++) {
      ordinates.addAll(List.of(4.0 * i + slit, 0.0));
      ordinates.addAll(List.of(4.0 * i + slit, 30 + noise(random)));
      ordinates.addAll(List.of(4.0 * i + 4, 30.0));
      ordinates.addAll(List.of(4.0 * i + 4 + noise(random) / 10, 0.0));
    }
    ordinates.addAll(List.of(4.0 * teeth, -5.0));
    return polygon(ordinates.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private static List<Geometry> scars(Geometry bed, Random random) {
    Coordinate[] outline = ((Polygon) bed.getGeometryN(0)).getExteriorRing().getCoordinates();
    List<Geometry> scars = new ArrayList<>();
    int count = 4 + random.nextInt(20);
    for (int i = 0; i < count; i++) {
      int from = random.nextInt(outline.length - 1);
      Coordinate a = outline[from];
      Coordinate b = outline[from + 1];
      Coordinate c = outline[random.nextInt(outline.length)];
      switch (random.nextInt(9)) {
        case 0 -> scars.add(line(a, b));
        case 1 -> scars.add(line(near(a, random), near(b, random)));
        case 2 -> scars.add(line(a, c));
        case 3 -> {
          scars.add(line(a, near(c, random)));
          scars.add(scars.get(scars.size() - 1).copy());
          scars.add(scars.get(scars.size() - 1).reverse());
        }
        case 4 -> scars.add(line(a, c, near(a, random), near(c, random), b));
        case 5 -> scars.add(bed.getGeometryN(0).copy());
        case 6 ->
            scars.add(
                GeometryFixer.fix(
                    FACTORY.createPolygon(
                        new Coordinate[] {a, near(a, random), c, near(c, random), a})));
        case 7 -> {
          // A hole of the bed as a scar, or a triangle on its outline.
          Polygon part = (Polygon) bed.getGeometryN(0);
          scars.add(
              part.getNumInteriorRing() > 0
                  ? FACTORY.createPolygon(part.getInteriorRingN(0).getCoordinates())
                  : line(a, b, c));
        }
        default -> {
          Coordinate middle = bed.getEnvelopeInternal().centre();
          double angle = random.nextDouble() * Math.PI;
          double reach = 1_000 * random.nextDouble();
          scars.add(
              line(
                  new Coordinate(
                      middle.x - reach * Math.cos(angle), middle.y - reach * Math.sin(angle)),
                  new Coordinate(
                      middle.x + reach * Math.cos(angle), middle.y + reach * Math.sin(angle))));
        }
      }
    }
    // The checks before measuring leave out what has neither length nor area.
    scars.removeIf(s -> s.isEmpty() || !(s.getLength() > 0) || s.getDimension() == 0);
    scars.removeIf(s -> s.getDimension() == 2 && !(s.getArea() > 0));
    return scars;
  }

  private static double noise(Random random) {
    return NOISE * (random.nextDouble() - 0.5);
  }

  private static Coordinate near(Coordinate c, Random random) {
    return new Coordinate(c.x + noise(random), c.y + noise(random));
  }

  private static Geometry line(Coordinate... coordinates) {
    return FACTORY.createLineString(coordinates);
  }

  private static Geometry polygon(double... ordinates) {
    Coordinate[] ring = new Coordinate[ordinates.length / 2 + 1];
    for (int i = 0; i + 1 < ring.length; i++) {
      ring[i] = new Coordinate(ordinates[2 * i], ordinates[2 * i + 1]);
    }
    ring[ring.length - 1] = ring[0].copy();
    Polygon polygon = FACTORY.createPolygon(ring);
    return polygon.isValid() ? polygon : GeometryFixer.fix(polygon);
  }
}
