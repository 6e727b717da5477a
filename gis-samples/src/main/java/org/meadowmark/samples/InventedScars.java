package org.meadowmark.samples;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.model.Channel;

/**
 * Scars and channels invented on beds. Scars are made when they are asked for and take no memory.
 */
public final class InventedScars {
  private static final double TWIN_CHANCE = 0.17;
  private static final double ALONG_CHANNEL_SHARE = 0.6;
  private static final int SURVEY_DAYS = 5;

  private final ScarSettings settings;
  private final List<Channel> channels;
  private final List<PlantedHotSpot> hotSpots;
  private final AreaSampler everywhere;
  private final List<AreaSampler> inHotSpots;
  private final GeometryFactory factory = new GeometryFactory();

  InventedScars(
      ScarSettings settings,
      List<Channel> channels,
      List<PlantedHotSpot> hotSpots,
      AreaSampler everywhere,
      List<AreaSampler> inHotSpots) {
    this.settings = settings;
    this.channels = List.copyOf(channels);
    this.hotSpots = List.copyOf(hotSpots);
    this.everywhere = everywhere;
    this.inHotSpots = List.copyOf(inHotSpots);
  }

  /** The settings that they were made from. */
  public ScarSettings settings() {
    return settings;
  }

  /** Channel centrelines, cut wherever they meet. */
  public List<Channel> channels() {
    return channels;
  }

  /** The truth about hot spots; fewer than asked for where channels pass too little bed. */
  public List<PlantedHotSpot> plantedHotSpots() {
    return hotSpots;
  }

  /**
   * The scars, in order of {@link SampleScar#truthId}. Each is computed on its own: the stream may
   * be made parallel without changing what it delivers.
   */
  public Stream<SampleScar> scars() {
    return LongStream.range(0, settings.scars()).mapToObj(this::scar);
  }

  private SampleScar scar(long number) {
    boolean isTwin = isTwin(number);
    long drawn = isTwin ? number - 1 : number;
    Draws draws = Draws.of(settings.seed(), Purpose.SCAR_PATH, drawn);
    CauseKind kind = CauseKind.draw(Draws.of(settings.seed(), Purpose.SCAR_KIND, drawn));
    double width = kind.drawWidth(draws);
    double length = kind.drawLength(draws);
    ScarPath.Start start = start(draws);
    Geometry shape;
    if (kind == CauseKind.GROUNDING) {
      shape = ScarPath.basin(draws, start, length, width, factory);
    } else {
      boolean mayEscape = kind == CauseKind.PROPELLER || kind == CauseKind.HULL;
      List<Coordinate> path = ScarPath.follow(draws, start, length, mayEscape, (x, y) -> true);
      double aside = draws.sign() * draws.between(0.9, 3);
      shape = ScarPath.line(isTwin ? ScarPath.beside(path, aside) : path, factory);
    }
    return new SampleScar(
        number + 1,
        kind.key,
        shape,
        kind == CauseKind.GROUNDING ? OptionalDouble.empty() : OptionalDouble.of(width),
        settings.surveyDate().plusDays(draws.below(SURVEY_DAYS)),
        SampleScar.Fate.NEW);
  }

  private boolean isTwin(long number) {
    if (number % 2 == 0) {
      return false;
    }
    Draws draws = Draws.of(settings.seed(), Purpose.SCAR_KIND, number - 1);
    return CauseKind.draw(draws) == CauseKind.PROPELLER && draws.chance(TWIN_CHANCE);
  }

  /** A point with a density of 1 on bed, and the elevation on bed within a hot spot. */
  private ScarPath.Start start(Draws draws) {
    double extra = settings.hotSpotElevation() - 1;
    double total = everywhere.areaSquareMetres();
    for (AreaSampler zone : inHotSpots) {
      total += extra * zone.areaSquareMetres();
    }
    double wanted = draws.uniform() * total - everywhere.areaSquareMetres();
    double heading = draws.between(0, 2 * StrictMath.PI);
    Coordinate place = null;
    for (int i = 0; i < inHotSpots.size() && wanted >= 0 && place == null; i++) {
      wanted -= extra * inHotSpots.get(i).areaSquareMetres();
      if (wanted < 0) {
        place = inHotSpots.get(i).draw(draws);
        if (draws.chance(ALONG_CHANNEL_SHARE)) {
          heading = along(hotSpots.get(i), place, draws);
        }
      }
    }
    if (place == null) {
      place = everywhere.draw(draws);
    }
    return new ScarPath.Start(place.x, place.y, heading);
  }

  private static double along(PlantedHotSpot hotSpot, Coordinate place, Draws draws) {
    Coordinate[] points = hotSpot.stretch().getCoordinates();
    int nearest = 1;
    for (int i = 1; i < points.length; i++) {
      if (points[i].distance(place) < points[nearest].distance(place)) {
        nearest = i;
      }
    }
    double heading =
        StrictMath.atan2(
            points[nearest].y - points[nearest - 1].y, points[nearest].x - points[nearest - 1].x);
    double way = draws.chance(0.5) ? 0 : StrictMath.PI;
    return heading + way + Math.toRadians(20) * draws.normal();
  }
}
