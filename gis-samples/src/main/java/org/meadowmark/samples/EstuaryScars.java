package org.meadowmark.samples;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.meadowmark.samples.SampleScar.Fate;

/**
 * Scars of an estuary, made one by one from their number, so that nothing is kept in memory.
 *
 * <p>Most start at a channel's edge: along the shoal, over the inside of a bend, or straight across
 * a point. The others lie anywhere on shallow bed, and a few on bare bottom.
 */
final class EstuaryScars {
  private static final double CHANNEL_SHARE = 0.68;
  private static final double ANCHOR_CHANNEL_SHARE = 0.30;
  private static final double BARE_SHARE = 0.07;
  private static final double TWIN_CHANCE = 0.17;
  private static final double FIRST_SEASON_SHARE = 0.6;
  private static final double EXTENSION_CHANCE = 0.05;
  private static final double NARROWING_A_YEAR = 0.93;
  private static final double MAPPING_ERROR_METRES = 0.3;
  private static final int MOST_SEASONS = 1_000;
  private static final double TRAP_CHANCE = 0.55;
  private static final int ATTEMPTS = 40;
  private static final int SURVEY_DAYS = 5;

  private final EstuarySettings settings;
  private final Terrain terrain;
  private final LaunchSites sites;
  private final Coordinate origin;
  private final GeometryFactory factory;
  private final int[] bedCells;
  private final int[] bareCells;

  /** A scar when it was cut, in local metres: a path, or a basin where the path is empty. */
  private record Cut(CauseKind kind, List<Coordinate> path, Geometry shape, double widthMetres) {}

  EstuaryScars(
      EstuarySettings settings,
      Terrain terrain,
      LaunchSites sites,
      Coordinate origin,
      GeometryFactory factory) {
    this.settings = settings;
    this.terrain = terrain;
    this.sites = sites;
    this.origin = origin;
    this.factory = factory;
    this.bedCells = shallowCells(true);
    this.bareCells = shallowCells(false);
    if (bedCells.length == 0 && settings.scars() > 0) {
      throw new IllegalArgumentException(
          "seed " + settings.seed() + " gives no shallow bed; take another seed or more beds");
    }
  }

  /** What a survey saw, in order of scar number. */
  Stream<SampleScar> seenIn(int season) {
    return LongStream.range(0, settings.scars())
        .mapToObj(number -> seen(number, season))
        .flatMap(Stream::ofNullable);
  }

  private SampleScar seen(long number, int season) {
    long birthNumber = isTwin(number) ? number - 1 : number;
    int birth = birth(birthNumber);
    if (season < birth) {
      return null;
    }
    Cut cut = cut(number);
    List<Coordinate> path = cut.path;
    Fate fate = Fate.NEW;
    double width = cut.widthMetres;
    for (int year = birth + 1; year <= season; year++) {
      Draws draws = Draws.of(settings.seed(), Purpose.SCAR_FATE, number * MOST_SEASONS + year);
      double persistence = 0.40 + 0.35 * Math.min(1, cut.widthMetres / 0.8);
      if (!draws.chance(persistence)) {
        return null;
      }
      fate = Fate.PERSISTING;
      width *= NARROWING_A_YEAR;
      if (draws.chance(EXTENSION_CHANCE) && path.size() > 1) {
        List<Coordinate> longer = extended(path, draws);
        if (longer.size() > path.size()) {
          path = longer;
          fate = Fate.EXTENDED;
        }
      }
    }
    return mapped(number, season, cut, path, width, fate);
  }

  private SampleScar mapped(
      long number, int season, Cut cut, List<Coordinate> path, double width, Fate fate) {
    Draws draws = Draws.of(settings.seed(), Purpose.SCAR_SURVEY, number * MOST_SEASONS + season);
    double east = Math.rint(1_000 * MAPPING_ERROR_METRES * draws.normal()) / 1_000;
    double north = Math.rint(1_000 * MAPPING_ERROR_METRES * draws.normal()) / 1_000;
    LocalDate day = settings.surveyDate(season).plusDays(draws.below(SURVEY_DAYS));
    Geometry shape = path.isEmpty() ? cut.shape : ScarPath.line(path, factory);
    Geometry placed =
        AffineTransformation.translationInstance(origin.x + east, origin.y + north)
            .transform(shape);
    placed.apply(
        (Coordinate c) -> {
          c.x = Math.rint(c.x * 1_000) / 1_000;
          c.y = Math.rint(c.y * 1_000) / 1_000;
        });
    placed.geometryChanged();
    OptionalDouble mappedWidth =
        path.isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(Math.max(0.05, Math.rint(width * 100) / 100));
    return new SampleScar(number + 1, cut.kind.key, placed, mappedWidth, day, fate);
  }

  private int birth(long number) {
    Draws draws = Draws.of(settings.seed(), Purpose.SCAR_BIRTH, number);
    if (settings.seasons() == 1 || draws.chance(FIRST_SEASON_SHARE)) {
      return 0;
    }
    return 1 + draws.below(settings.seasons() - 1);
  }

  /** Odd scars may be twins of the one before: cut by a second propeller. */
  private boolean isTwin(long number) {
    if (number % 2 == 0) {
      return false;
    }
    Draws draws = Draws.of(settings.seed(), Purpose.SCAR_KIND, number - 1);
    return CauseKind.draw(draws) == CauseKind.PROPELLER && draws.chance(TWIN_CHANCE);
  }

  private Cut cut(long number) {
    if (isTwin(number)) {
      Cut leader = cut(number - 1);
      Draws draws = Draws.of(settings.seed(), Purpose.SCAR_PATH, number);
      List<Coordinate> twin = ScarPath.beside(leader.path, draws.sign() * draws.between(0.9, 3));
      return new Cut(leader.kind, twin, null, leader.widthMetres);
    }
    CauseKind kind = CauseKind.draw(Draws.of(settings.seed(), Purpose.SCAR_KIND, number));
    Draws draws = Draws.of(settings.seed(), Purpose.SCAR_PATH, number);
    double width = kind.drawWidth(draws);
    double length = kind.drawLength(draws);
    boolean hasPattern = settings.plantedHotSpots() > 0 && !sites.isEmpty();
    double channelShare = kind == CauseKind.ANCHOR ? ANCHOR_CHANNEL_SHARE : CHANNEL_SHARE;
    boolean atChannel = hasPattern && draws.chance(channelShare);
    boolean onBare = !atChannel && draws.chance(BARE_SHARE / (1 - CHANNEL_SHARE));
    boolean mayEscape = kind == CauseKind.PROPELLER || kind == CauseKind.HULL;
    List<Coordinate> longest = List.of();
    for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
      ScarPath.Start start = atChannel ? atChannel(draws, length) : anywhere(draws, onBare);
      if (!terrain.isShallowWater(start.x(), start.y())) {
        continue;
      }
      if (kind == CauseKind.GROUNDING) {
        Geometry basin = ScarPath.basin(draws, start, length, width, factory);
        return new Cut(kind, List.of(), basin, width);
      }
      List<Coordinate> path =
          ScarPath.follow(draws, start, length, mayEscape, terrain::isShallowWater);
      if (length(path) >= Math.min(length, kind.shortestMetres + 4)) {
        return new Cut(kind, path, null, width);
      }
      if (length(path) > length(longest)) {
        longest = path;
      }
    }
    return fallback(kind, draws, length, width, longest);
  }

  /** Only where the place has hardly any shallow bed. */
  private Cut fallback(
      CauseKind kind, Draws draws, double length, double width, List<Coordinate> longest) {
    ScarPath.Start start = anywhere(draws, false);
    if (kind == CauseKind.GROUNDING) {
      return new Cut(kind, List.of(), ScarPath.basin(draws, start, length, width, factory), width);
    }
    List<Coordinate> path =
        length(longest) >= 1
            ? longest
            : ScarPath.follow(draws, start, kind.shortestMetres, false, (x, y) -> true);
    return new Cut(kind, path, null, width);
  }

  private ScarPath.Start atChannel(Draws draws, double length) {
    LaunchSites.Site site = sites.draw(draws);
    List<LaunchSites.Trap> traps = sites.traps(site);
    if (!traps.isEmpty() && draws.chance(TRAP_CHANCE)) {
      LaunchSites.Trap trap = traps.get((int) (traps.size() * draws.uniform() * draws.uniform()));
      return overTrap(trap, site.channel().heading(site.vertex()), length, draws);
    }
    ChannelPath channel = site.channel();
    Coordinate place = channel.points()[site.vertex()];
    double heading = channel.heading(site.vertex());
    double outwards = heading + site.side() * StrictMath.PI / 2;
    int way = draws.sign();
    double style = draws.uniform();
    if (site.isInsideOfBend() && style < 0.45) {
      int ahead = site.vertex() + way * (12 + draws.below(28));
      Coordinate target =
          channel.points()[Math.min(channel.points().length - 1, Math.max(0, ahead))];
      Coordinate from = offset(place, outwards, channel, site.vertex(), draws.between(1, 12));
      double chord = StrictMath.atan2(target.y - from.y, target.x - from.x);
      return new ScarPath.Start(from.x, from.y, chord + Math.toRadians(6) * draws.normal());
    }
    if (style < 0.78) {
      Coordinate from = offset(place, outwards, channel, site.vertex(), 3 + draws.exponential(24));
      double along = way > 0 ? heading : heading + StrictMath.PI;
      return new ScarPath.Start(from.x, from.y, along + Math.toRadians(15) * draws.normal());
    }
    Coordinate from = offset(place, outwards, channel, site.vertex(), draws.between(2, 45));
    return new ScarPath.Start(from.x, from.y, outwards + Math.toRadians(30) * draws.normal());
  }

  /** A start from which a scar runs over a small bed, more or less along the channel. */
  private static ScarPath.Start overTrap(
      LaunchSites.Trap trap, double channelHeading, double length, Draws draws) {
    double direction = draws.between(0, 2 * StrictMath.PI);
    double distance = trap.radiusMetres() * StrictMath.sqrt(draws.uniform());
    double way = draws.chance(0.5) ? 0 : StrictMath.PI;
    double heading = channelHeading + way + Math.toRadians(32) * draws.normal();
    double before = length * draws.between(0.2, 0.8);
    return new ScarPath.Start(
        trap.x() + distance * StrictMath.cos(direction) - before * StrictMath.cos(heading),
        trap.y() + distance * StrictMath.sin(direction) - before * StrictMath.sin(heading),
        heading);
  }

  private static Coordinate offset(
      Coordinate place, double direction, ChannelPath channel, int vertex, double fromBank) {
    double distance = channel.halfWidthMetres(vertex) + fromBank;
    return new Coordinate(
        place.x + distance * StrictMath.cos(direction),
        place.y + distance * StrictMath.sin(direction));
  }

  private ScarPath.Start anywhere(Draws draws, boolean bare) {
    int[] cells = bare && bareCells.length > 0 ? bareCells : bedCells;
    double heading = draws.between(0, 2 * StrictMath.PI);
    int columns = terrain.depth().columns();
    int cell = cells[draws.below(cells.length)];
    double x = (cell % columns + draws.between(-0.5, 0.5)) * Terrain.CELL_METRES;
    double y = (cell / columns + draws.between(-0.5, 0.5)) * Terrain.CELL_METRES;
    return new ScarPath.Start(x, y, heading);
  }

  private List<Coordinate> extended(List<Coordinate> path, Draws draws) {
    Coordinate last = path.get(path.size() - 1);
    Coordinate before = path.get(path.size() - 2);
    double heading = StrictMath.atan2(last.y - before.y, last.x - before.x);
    List<Coordinate> more =
        ScarPath.follow(
            draws,
            new ScarPath.Start(last.x, last.y, heading),
            draws.between(5, 25),
            false,
            terrain::isShallowWater);
    List<Coordinate> longer = new ArrayList<>(path);
    longer.addAll(more.subList(1, more.size()));
    return longer;
  }

  private static double length(List<Coordinate> path) {
    double length = 0;
    for (int i = 1; i < path.size(); i++) {
      length += path.get(i).distance(path.get(i - 1));
    }
    return length;
  }

  private int[] shallowCells(boolean grassy) {
    FieldGrid grass = terrain.grass();
    IntStream.Builder cells = IntStream.builder();
    for (int row = 0; row < grass.rows(); row++) {
      for (int column = 0; column < grass.columns(); column++) {
        double x = column * Terrain.CELL_METRES;
        double y = row * Terrain.CELL_METRES;
        boolean hasGrass = grass.get(column, row) >= 0;
        if (hasGrass == grassy && terrain.isShallowWater(x, y)) {
          cells.add(row * grass.columns() + column);
        }
      }
    }
    return cells.build().toArray();
  }
}
