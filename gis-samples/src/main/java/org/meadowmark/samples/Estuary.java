package org.meadowmark.samples;

import java.util.List;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.MapArea;

/**
 * An invented estuary, in metres of {@link #CRS}. Immutable as far as JTS geometries are; scars are
 * made when they are asked for and take no memory.
 */
public final class Estuary {
  /**
   * The grid: zone 21 north of UTM on WGS 84. The place lies in it at about 30° north, 57° west,
   * where there is nothing but ocean.
   */
  public static final String CRS = "EPSG:32621";

  /** The same grid as the text of a {@code .prj} file. */
  static final String ESRI_WKT =
      "PROJCS[\"WGS_1984_UTM_Zone_21N\",GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\","
          + "SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],PRIMEM[\"Greenwich\",0.0],"
          + "UNIT[\"Degree\",0.0174532925199433]],PROJECTION[\"Transverse_Mercator\"],"
          + "PARAMETER[\"False_Easting\",500000.0],PARAMETER[\"False_Northing\",0.0],"
          + "PARAMETER[\"Central_Meridian\",-57.0],PARAMETER[\"Scale_Factor\",0.9996],"
          + "PARAMETER[\"Latitude_Of_Origin\",0.0],UNIT[\"Meter\",1.0]]";

  private final EstuarySettings settings;
  private final List<Bed> beds;
  private final List<Channel> channels;
  private final List<MapArea> managementAreas;
  private final List<MapArea> surveyedArea;
  private final List<MapArea> land;
  private final DepthGrid depth;
  private final Coordinate launchRamp;
  private final List<PlantedHotSpot> hotSpots;
  private final EstuaryScars scars;

  Estuary(
      EstuarySettings settings,
      List<Bed> beds,
      List<Channel> channels,
      List<MapArea> managementAreas,
      List<MapArea> surveyedArea,
      List<MapArea> land,
      DepthGrid depth,
      Coordinate launchRamp,
      List<PlantedHotSpot> hotSpots,
      EstuaryScars scars) {
    this.settings = settings;
    this.beds = List.copyOf(beds);
    this.channels = List.copyOf(channels);
    this.managementAreas = List.copyOf(managementAreas);
    this.surveyedArea = List.copyOf(surveyedArea);
    this.land = List.copyOf(land);
    this.depth = depth;
    this.launchRamp = launchRamp;
    this.hotSpots = List.copyOf(hotSpots);
    this.scars = scars;
  }

  /** Name of the invented place. */
  public String name() {
    return Names.PLACE;
  }

  /** The settings that it was made from. */
  public EstuarySettings settings() {
    return settings;
  }

  /** Beds; they do not overlap, and those that touch share their edges exactly. */
  public List<Bed> beds() {
    return beds;
  }

  /** Channel centrelines, cut at every junction. */
  public List<Channel> channels() {
    return channels;
  }

  /** Areas that share their edges; the east end is outside all of them. */
  public List<MapArea> managementAreas() {
    return managementAreas;
  }

  /** What was surveyed, the same in every season; some beds lie outside wholly or in part. */
  public List<MapArea> surveyedArea() {
    return surveyedArea;
  }

  /** Mainland, barrier and islets. */
  public List<MapArea> land() {
    return land;
  }

  /** Water depth. */
  public DepthGrid depth() {
    return depth;
  }

  /** Where boats are launched. */
  public Coordinate launchRamp() {
    return launchRamp.copy();
  }

  /** The truth about hot spots; fewer than asked for where the place has no room. */
  public List<PlantedHotSpot> plantedHotSpots() {
    return hotSpots;
  }

  /**
   * Scars that a survey saw, in order of {@link SampleScar#truthId}. Each is computed on its own:
   * the stream may be made parallel without changing what it delivers.
   *
   * @param season 0 for the first survey
   * @throws IllegalArgumentException if there is no such season
   */
  public Stream<SampleScar> scars(int season) {
    if (season < 0 || season >= settings.seasons()) {
      throw new IllegalArgumentException("no such season: " + season);
    }
    return scars.seenIn(season);
  }
}
