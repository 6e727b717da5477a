package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.MapArea;

/**
 * Invents an estuary: a lagoon behind a barrier, a meandering channel network, shoals, beds by
 * depth, and scars where boats meet them. The same settings give the same estuary on every machine
 * and any number of threads.
 *
 * <p>Time and memory are linear in the number of beds; scars cost time only when they are asked
 * for.
 */
public final class EstuaryGenerator {
  private static final double CENTRAL_EASTING = 500_000;
  private static final double SOUTH_NORTHING = 3_316_000;
  private static final double DEPTH_CELL_METRES = 40;
  private static final String SOURCE = "invented";

  private EstuaryGenerator() {}

  /**
   * Makes the estuary of some settings.
   *
   * @throws IllegalArgumentException if the seed gives a place with no shallow bed for scars
   */
  public static Estuary generate(EstuarySettings settings) {
    GeometryFactory factory = new GeometryFactory();
    Shoreline shore = new Shoreline(settings);
    Channels network = Channels.dig(shore, Draws.of(settings.seed(), Purpose.CHANNELS, 0));
    shore.addIslets(network, Draws.of(settings.seed(), Purpose.ISLETS, 0));
    Terrain terrain = new Terrain(settings, shore, network.paths());
    Coordinate origin =
        new Coordinate(
            CENTRAL_EASTING - Math.rint(shore.widthMetres() / 2_000) * 1_000, SOUTH_NORTHING);
    AffineTransformation place = AffineTransformation.translationInstance(origin.x, origin.y);
    BedMaker bedMaker = new BedMaker(terrain, factory);
    List<BedMaker.Outline> outlines = bedMaker.beds(settings.beds());
    LaunchSites sites = new LaunchSites(terrain, network.paths(), outlines, settings);
    AreaMaker areaMaker = new AreaMaker(settings.seed(), shore.widthMetres(), factory);
    Coordinate ramp = network.ramp();
    return new Estuary(
        settings,
        beds(outlines, place),
        channels(network, place, factory),
        areas("management_areas", "M", areaMaker.managementAreas(), place, true),
        areas("surveyed_area", "V", List.of(areaMaker.surveyedArea()), place, false),
        areas("land", "L", bedMaker.land(), place, false),
        depth(terrain, shore, origin),
        new Coordinate(origin.x + ramp.x, origin.y + ramp.y),
        hotSpots(sites, settings, place, factory),
        new EstuaryScars(settings, terrain, sites, origin, factory));
  }

  private static List<Bed> beds(List<BedMaker.Outline> outlines, AffineTransformation place) {
    List<Bed> beds = new ArrayList<>();
    for (BedMaker.Outline outline : outlines) {
      String id = String.format(Locale.ROOT, "B%04d", beds.size() + 1);
      beds.add(
          new Bed(
              id,
              new FeatureRef(SOURCE, "beds", id),
              placed(outline.polygon(), place),
              outline.species(),
              outline.texture()));
    }
    return beds;
  }

  private static List<Channel> channels(
      Channels network, AffineTransformation place, GeometryFactory factory) {
    List<Channel> channels = new ArrayList<>();
    for (ChannelPath reach : Channels.reaches(network.paths())) {
      String id = String.format(Locale.ROOT, "C%03d", channels.size() + 1);
      LineString line = factory.createLineString(reach.points());
      channels.add(
          new Channel(
              id, new FeatureRef(SOURCE, "channels", id), placed(line, place), reach.name()));
    }
    return channels;
  }

  private static List<MapArea> areas(
      String layer,
      String prefix,
      List<Polygon> polygons,
      AffineTransformation place,
      boolean named) {
    List<MapArea> areas = new ArrayList<>();
    for (Polygon polygon : polygons) {
      String id = prefix + (areas.size() + 1);
      areas.add(
          new MapArea(
              id,
              new FeatureRef(SOURCE, layer, id),
              placed(polygon, place),
              named ? Names.area(areas.size()) : ""));
    }
    return areas;
  }

  private static DepthGrid depth(Terrain terrain, Shoreline shore, Coordinate origin) {
    int columns = (int) Math.floor(shore.widthMetres() / DEPTH_CELL_METRES);
    int rows = (int) Math.floor(Shoreline.HEIGHT_METRES / DEPTH_CELL_METRES);
    float[] depths = new float[columns * rows];
    for (int row = 0; row < rows; row++) {
      double y = (rows - row - 0.5) * DEPTH_CELL_METRES;
      for (int column = 0; column < columns; column++) {
        double x = (column + 0.5) * DEPTH_CELL_METRES;
        double depth = Math.rint(terrain.depth().at(x, y) * 100) / 100;
        depths[row * columns + column] = terrain.land().at(x, y) >= 0 ? Float.NaN : (float) depth;
      }
    }
    return new DepthGrid(origin.x, origin.y, DEPTH_CELL_METRES, columns, rows, depths);
  }

  private static List<PlantedHotSpot> hotSpots(
      LaunchSites sites,
      EstuarySettings settings,
      AffineTransformation place,
      GeometryFactory factory) {
    List<PlantedHotSpot> hotSpots = new ArrayList<>();
    for (LaunchSites.Stretch stretch : sites.planted()) {
      Coordinate[] points =
          Arrays.copyOfRange(stretch.channel().points(), stretch.from(), stretch.to() + 1);
      hotSpots.add(
          new PlantedHotSpot(
              hotSpots.size() + 1,
              stretch.channel().name(),
              (LineString) placed(factory.createLineString(points), place),
              settings.hotSpotElevation()));
    }
    return hotSpots;
  }

  /** Moves to the map grid, to the centimetre, so that equal coordinates stay equal. */
  private static Geometry placed(Geometry local, AffineTransformation place) {
    Geometry moved = place.transform(local);
    moved.apply(
        (Coordinate c) -> {
          c.x = Math.rint(c.x * 100) / 100;
          c.y = Math.rint(c.y * 100) / 100;
        });
    moved.geometryChanged();
    return moved;
  }
}
