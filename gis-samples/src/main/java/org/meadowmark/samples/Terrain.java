package org.meadowmark.samples;

import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;

/** Land, depth and grass of an estuary as fields, in local metres. */
final class Terrain {
  static final double CELL_METRES = 10;

  /** Boats scar where it is shallower than this. */
  static final double SCARRED_TO_METRES = 1.35;

  private static final double REACH_METRES = 450;
  private static final double BANK_METRES = 8;

  private final FieldGrid clearance;
  private final FieldGrid land;
  private final FieldGrid depth;
  private final FieldGrid grass;
  private final FieldGrid texture;
  private final FieldGrid cover;

  Terrain(EstuarySettings settings, Shoreline shore, List<ChannelPath> channels) {
    int columns = (int) Math.round(shore.widthMetres() / CELL_METRES) + 1;
    int rows = (int) Math.round(Shoreline.HEIGHT_METRES / CELL_METRES) + 1;
    clearance = new FieldGrid(CELL_METRES, columns, rows);
    land = new FieldGrid(CELL_METRES, columns, rows);
    depth = new FieldGrid(CELL_METRES, columns, rows);
    grass = new FieldGrid(CELL_METRES, columns, rows);
    texture = new FieldGrid(CELL_METRES, columns, rows);
    cover = new FieldGrid(CELL_METRES, columns, rows);
    FieldGrid halfWidth = new FieldGrid(CELL_METRES, columns, rows);
    clearance.fill((x, y, column, row) -> REACH_METRES);
    channels.forEach(channel -> dig(channel, halfWidth));
    Shoreline.Barrier[] barrier =
        IntStream.range(0, columns)
            .mapToObj(column -> shore.barrierAt(column * CELL_METRES))
            .toArray(Shoreline.Barrier[]::new);
    fillLandAndDepth(settings, shore, barrier, halfWidth);
    fillTexture(settings);
    fillCover(settings);
    fillGrass(settings, barrier);
    land.setBorder(-1);
    grass.setBorder(-1);
  }

  FieldGrid clearance() {
    return clearance;
  }

  FieldGrid land() {
    return land;
  }

  FieldGrid depth() {
    return depth;
  }

  FieldGrid grass() {
    return grass;
  }

  /** Above 0 where grass is dense: mappers draw an edge where cover changes. */
  FieldGrid cover() {
    return cover;
  }

  /** Above 0 where grass is patchy. */
  FieldGrid texture() {
    return texture;
  }

  /** Whether a boat can touch the bottom here. */
  boolean isShallowWater(double x, double y) {
    return land.covers(x, y)
        && land.at(x, y) < 0
        && depth.at(x, y) < SCARRED_TO_METRES
        && clearance.at(x, y) > -4;
  }

  private void dig(ChannelPath channel, FieldGrid halfWidth) {
    Coordinate[] points = channel.points();
    for (int i = 1; i < points.length; i++) {
      double half = channel.halfWidthMetres(i);
      Coordinate from = points[i - 1];
      Coordinate to = points[i];
      double reach = REACH_METRES + half;
      int firstColumn = Math.max(0, node(Math.min(from.x, to.x) - reach));
      int lastColumn = Math.min(clearance.columns() - 1, node(Math.max(from.x, to.x) + reach));
      int firstRow = Math.max(0, node(Math.min(from.y, to.y) - reach));
      int lastRow = Math.min(clearance.rows() - 1, node(Math.max(from.y, to.y) + reach));
      for (int row = firstRow; row <= lastRow; row++) {
        for (int column = firstColumn; column <= lastColumn; column++) {
          double value = distance(column * CELL_METRES, row * CELL_METRES, from, to) - half;
          if (value < clearance.get(column, row)) {
            clearance.set(column, row, (float) value);
            halfWidth.set(column, row, (float) half);
          }
        }
      }
    }
  }

  private static int node(double metres) {
    return (int) Math.floor(metres / CELL_METRES);
  }

  private static double distance(double x, double y, Coordinate from, Coordinate to) {
    double dx = to.x - from.x;
    double dy = to.y - from.y;
    double along = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy);
    double share = Math.min(1, Math.max(0, along));
    double offX = x - from.x - share * dx;
    double offY = y - from.y - share * dy;
    return StrictMath.sqrt(offX * offX + offY * offY);
  }

  private void fillLandAndDepth(
      EstuarySettings settings, Shoreline shore, Shoreline.Barrier[] barrier, FieldGrid halfWidth) {
    GradientNoise flats = new GradientNoise(settings.seed(), Purpose.FLATS);
    depth.fill(
        (x, y, column, row) -> {
          double height = shore.height(x, y, barrier[column]);
          double bank = clearance.get(column, row);
          land.set(column, row, (float) Math.min(height, bank - BANK_METRES));
          double fromShore = -height;
          double seaward = barrier[column].northing() - y;
          double open =
              seaward > 0
                  ? 1.5 + Math.max(0, seaward - 120) / 75
                  : 0.25
                      + 1.35 * (1 - StrictMath.exp(-Math.max(0, fromShore) / 420))
                      + 0.95 * flats.fractal(x / 1_100, y / 1_100, 4);
          double levee = bank - 70;
          double shoal = 0.45 * StrictMath.exp(-levee * levee / 4_000);
          double shallow = Math.max(0.12, open - shoal);
          if (bank >= 0) {
            return shallow + 0.5 * StrictMath.exp(-bank / 9);
          }
          double half = Math.max(5, halfWidth.get(column, row));
          double fromMiddle = Math.min(1, Math.max(0, 1 + bank / half));
          double deepest = 1.6 + half / 24;
          return shallow + 0.5 + deepest * (1 - fromMiddle * fromMiddle);
        });
  }

  private void fillTexture(EstuarySettings settings) {
    GradientNoise noise = new GradientNoise(settings.seed(), Purpose.TEXTURE);
    texture.fill((x, y, column, row) -> noise.fractal(x / 1_500, y / 1_500, 3) + 0.02);
  }

  private void fillCover(EstuarySettings settings) {
    GradientNoise noise = new GradientNoise(settings.seed(), Purpose.COVER);
    cover.fill(
        (x, y, column, row) ->
            0.8 * noise.fractal(x / 380, y / 380, 2)
                + 0.5 * StrictMath.exp(-Math.max(0, clearance.get(column, row)) / 60)
                - 0.2);
  }

  private void fillGrass(EstuarySettings settings, Shoreline.Barrier[] barrier) {
    GradientNoise broad = new GradientNoise(settings.seed(), Purpose.GRASS);
    GradientNoise fine = new GradientNoise(settings.seed(), Purpose.PATCHES);
    grass.fill(
        (x, y, column, row) -> {
          double bank = clearance.get(column, row);
          double water = depth.get(column, row);
          double patchy = Math.min(1, Math.max(0, texture.get(column, row) * 6 + 0.5));
          double density =
              1.1 * broad.fractal(x / 520, y / 520, 4)
                  + 0.34 * StrictMath.exp(-Math.max(0, bank) / 110)
                  + 0.16 * (1.1 - water)
                  - 0.16
                  + patchy * (0.62 * fine.fractal(x / 75, y / 75, 2) - 0.08)
                  + (1 - patchy) * 0.10 * fine.at(x / 60, y / 60);
          double offChannel = (bank - 14) / 30;
          double offLand = (-land.get(column, row) - 16) / 60;
          double wetEnough = (water - 0.22) / 0.15;
          double litEnough = (2.15 - water) / 0.3;
          double sheltered = (y - barrier[column].northing()) / 60;
          return Math.min(
              density,
              Math.min(
                  Math.min(offChannel, offLand),
                  Math.min(Math.min(wetEnough, litEnough), sheltered)));
        });
  }
}
