package org.meadowmark.samples;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.Track;
import io.jenetics.jpx.TrackSegment;
import io.jenetics.jpx.WayPoint;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * Scars as GPS tracks, GPX 1.1: the crew's number as name, the width in metres as comment, the
 * cause as type. Positions are rounded to seven decimals (about a centimetre) and have no other
 * error.
 *
 * <p>Four mistakes are planted: the third track has no width, the fifth a mistyped cause, a track
 * at the end is the sixth one again, and another has a single point.
 */
final class ScarTracks {
  private static final double DECIMALS = 1e7;
  private static final double WADING_METRES_A_SECOND = 0.4;
  private static final int MINUTES_BETWEEN_STARTS = 7;
  private static final int TWICE = 5;
  private static final int WITHOUT_WIDTH = 2;
  private static final int MISTYPED = 4;

  private ScarTracks() {}

  static void write(Path file, List<SampleScar> scars, MapGrids grids) throws IOException {
    GPX.Builder gpx = GPX.builder("invented");
    for (int i = 0; i < scars.size(); i++) {
      gpx.addTrack(track(i, scars.get(i), grids).name(name(i)).build());
    }
    Track twice = track(TWICE, scars.get(TWICE), grids).name(name(scars.size())).build();
    gpx.addTrack(twice);
    WayPoint start = twice.getSegments().get(0).getPoints().get(0);
    gpx.addTrack(
        Track.builder()
            .name(name(scars.size() + 1))
            .addSegment(TrackSegment.of(List.of(start)))
            .build());
    GPX.Writer.of(new GPX.Writer.Indent("  ")).write(gpx.build(), file);
  }

  private static String name(int index) {
    return String.format(Locale.ROOT, "T%02d", index + 1);
  }

  private static Track.Builder track(int index, SampleScar scar, MapGrids grids) {
    Track.Builder track = Track.builder().type(word(index, scar));
    OptionalDouble width = index == WITHOUT_WIDTH ? OptionalDouble.empty() : scar.widthMetres();
    width.ifPresent(metres -> track.cmt(String.format(Locale.ROOT, "%.2f", metres)));
    Coordinate[] metres = scar.geometry().getCoordinates();
    Geometry degrees = grids.toDegrees(scar.geometry());
    Instant start =
        scar.seenOn()
            .atTime(12, 0)
            .plusMinutes((long) MINUTES_BETWEEN_STARTS * index)
            .toInstant(ZoneOffset.UTC);
    TrackSegment.Builder segment = TrackSegment.builder();
    double walked = 0;
    for (int i = 0; i < metres.length; i++) {
      walked += i == 0 ? 0 : metres[i].distance(metres[i - 1]);
      Coordinate place = degrees.getCoordinates()[i];
      segment.addPoint(
          WayPoint.builder()
              .lat(rounded(place.y))
              .lon(rounded(place.x))
              .time(start.plusSeconds(Math.round(walked / WADING_METRES_A_SECOND)))
              .build());
    }
    return track.addSegment(segment.build());
  }

  /** The crew's word for the cause. */
  private static String word(int index, SampleScar scar) {
    if (index == MISTYPED) {
      return "proppeller";
    }
    return scar.cause().equals(CauseKind.PROPELLER.key) ? "prop" : scar.cause();
  }

  private static double rounded(double degrees) {
    return Math.rint(degrees * DECIMALS) / DECIMALS;
  }
}
