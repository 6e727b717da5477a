package org.meadowmark.benchmarks;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.Scar.WidthSource;
import org.meadowmark.core.project.AnalysisGrid;
import org.meadowmark.core.project.CrsCatalog;
import org.meadowmark.core.project.GeodesicGroundScale;
import org.meadowmark.core.rank.evidence.MeasuredEvidence;

/**
 * A made-up coast of winding channels side by side, far longer than any estuary of the sample
 * generator: beds along both banks, islands between, scars around the channels. Always the same for
 * the same size.
 */
public final class LongChannels {
  private static final double WEST = 300_000;
  private static final double SOUTH = 3_000_000;
  private static final double ROW_METRES = 50_000;
  private static final double ROW_SPACING_METRES = 900;
  private static final double CROSS_EVERY_METRES = 12_500;
  private static final double VERTEX_SPACING_METRES = 25;
  private static final double SWING_METRES = 120;
  private static final double WAVE_METRES = 2_400;
  private static final double BED_SPACING_METRES = 400;
  private static final double ISLAND_SPACING_METRES = 2_000;
  private static final int BED_VERTICES = 60;
  private static final int SCAR_VERTICES = 6;
  private static final double USUAL_HOT_SHARE = 0.2;
  private static final int HOT_SPOTS = 40;

  private final GeometryFactory factory = new GeometryFactory();
  private final Random random = new Random(7);
  private final int rows;
  private final double hotShare;

  private LongChannels(int rows, double hotShare) {
    this.rows = rows;
    this.hotShare = hotShare;
  }

  /**
   * A survey.
   *
   * @param rows winding channels of about 52 km each
   * @param scars scar lines, 40 m long on average
   */
  public static MetricSurvey of(int rows, int scars) {
    return of(rows, scars, USUAL_HOT_SHARE);
  }

  /**
   * A survey.
   *
   * @param rows winding channels of about 52 km each
   * @param scars scar lines, 40 m long on average
   * @param hotShare share of the scars that lie in 40 hot spots, in 0–1
   */
  public static MetricSurvey of(int rows, int scars, double hotShare) {
    LongChannels coast = new LongChannels(rows, hotShare);
    AnalysisGrid grid = AnalysisGrid.ofCode("EPSG:32617", new CrsCatalog());
    return new MetricSurvey(
        grid.label(),
        grid.wkt(),
        coast.scars(scars),
        coast.beds(),
        coast.channels(),
        List.of(),
        List.of(),
        coast.islands(),
        coast::depth,
        new GeodesicGroundScale(grid));
  }

  /** Made-up classes of its beds, and made-up gains for every tenth of its scars. */
  public static MeasuredEvidence measured(MetricSurvey survey) {
    String[] classes = {"none", "light", "light", "moderate", "severe"};
    Map<String, String> severity = new HashMap<>();
    for (int i = 0; i < survey.beds().size(); i++) {
      severity.put(survey.beds().get(i).id(), classes[i * 7 % classes.length]);
    }
    Map<String, Double> gains = new HashMap<>();
    for (int i = 0; i < survey.scars().size(); i += 10) {
      gains.put(survey.scars().get(i).id(), 0.001 * (1 + i % 7));
    }
    return new MeasuredEvidence(severity, Optional.of(gains));
  }

  private static double middle(double x) {
    return SWING_METRES * Math.sin(2 * Math.PI * x / WAVE_METRES);
  }

  private OptionalDouble depth(double x, double y) {
    double row = Math.rint((y - SOUTH) / ROW_SPACING_METRES);
    double off = Math.abs(y - SOUTH - row * ROW_SPACING_METRES - middle(x - WEST));
    return OptionalDouble.of(4 * Math.exp(-off / 60));
  }

  private List<Channel> channels() {
    List<Channel> channels = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      List<Coordinate> line = new ArrayList<>();
      for (double x = 0; x <= ROW_METRES; x += VERTEX_SPACING_METRES) {
        line.add(at(x, row * ROW_SPACING_METRES + middle(x)));
      }
      channels.add(channel(String.format(Locale.ROOT, "R%03d", row), line));
    }
    for (double x = 0; x <= ROW_METRES; x += CROSS_EVERY_METRES) {
      List<Coordinate> line = new ArrayList<>();
      double far = (rows - 1) * ROW_SPACING_METRES + middle(x);
      for (double y = middle(x); y <= far; y += VERTEX_SPACING_METRES) {
        line.add(at(x, y));
      }
      if (line.size() > 1) {
        channels.add(channel(String.format(Locale.ROOT, "X%05.0f", x), line));
      }
    }
    return channels;
  }

  private Channel channel(String id, List<Coordinate> line) {
    return new Channel(
        id, ref(id), factory.createLineString(line.toArray(Coordinate[]::new)), "channel " + id);
  }

  private List<Bed> beds() {
    List<Bed> beds = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      for (double x = BED_SPACING_METRES / 2; x < ROW_METRES; x += BED_SPACING_METRES) {
        for (int side = -1; side <= 1; side += 2) {
          double y = row * ROW_SPACING_METRES + middle(x) + side * 160;
          String id = String.format(Locale.ROOT, "B%06d", beds.size());
          beds.add(new Bed(id, ref(id), blob(x, y, 180, 90, BED_VERTICES), "unknown", ""));
        }
      }
    }
    return beds;
  }

  private List<MapArea> islands() {
    List<MapArea> islands = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      for (double x = ISLAND_SPACING_METRES / 2; x < ROW_METRES; x += ISLAND_SPACING_METRES) {
        String id = String.format(Locale.ROOT, "I%05d", islands.size());
        double y = (row + 0.5) * ROW_SPACING_METRES;
        islands.add(new MapArea(id, ref(id), blob(x, y, 150, 100, BED_VERTICES), ""));
      }
    }
    return islands;
  }

  private List<Scar> scars(int count) {
    String[] causes = {"propeller", "propeller", "propeller", "anchor", "hull", "unknown"};
    List<Scar> scars = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      int row = random.nextInt(rows);
      double x = random.nextDouble() * ROW_METRES;
      if (random.nextDouble() < hotShare) {
        int spot = random.nextInt(HOT_SPOTS);
        row = spot * 7 % rows;
        x = (spot + 0.5) / HOT_SPOTS * ROW_METRES + 150 * random.nextGaussian();
      }
      double y = row * ROW_SPACING_METRES + middle(x) + 110 * random.nextGaussian();
      double angle = random.nextDouble() * Math.PI;
      double step = 32 * Math.exp(0.6 * random.nextGaussian()) / (SCAR_VERTICES - 1);
      Coordinate[] line = new Coordinate[SCAR_VERTICES];
      for (int v = 0; v < SCAR_VERTICES; v++) {
        line[v] = at(x, y);
        angle += 0.15 * random.nextGaussian();
        x += step * Math.cos(angle);
        y += step * Math.sin(angle);
      }
      String id = String.format(Locale.ROOT, "S%07d", i);
      boolean measured = random.nextBoolean();
      scars.add(
          new Scar(
              id,
              ref(id),
              factory.createLineString(line),
              causes[random.nextInt(causes.length)],
              measured ? 0.2 + 0.4 * random.nextDouble() : 0.4,
              measured ? WidthSource.MEASURED : WidthSource.CAUSE_DEFAULT,
              Optional.empty()));
    }
    return scars;
  }

  private Geometry blob(double x, double y, double halfWidth, double halfHeight, int vertices) {
    Coordinate[] ring = new Coordinate[vertices + 1];
    for (int v = 0; v < vertices; v++) {
      double angle = 2 * Math.PI * v / vertices;
      double in = 0.8 + 0.2 * random.nextDouble();
      ring[v] = at(x + in * halfWidth * Math.cos(angle), y + in * halfHeight * Math.sin(angle));
    }
    ring[vertices] = ring[0];
    return factory.createPolygon(ring);
  }

  private static Coordinate at(double x, double y) {
    return new Coordinate(WEST + x, SOUTH + y);
  }

  private static FeatureRef ref(String id) {
    return new FeatureRef("made", "made", id);
  }
}
