package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;

/**
 * What a crew brings home from its first days out: a window of an estuary around one planted hot
 * spot, with the beds and channels in it, and a few dozen scars that were walked with a GPS
 * receiver. Metres of {@link Estuary#CRS}.
 *
 * @param beds beds in the window, cut at its edge
 * @param channels channels in the window, cut at its edge
 * @param scars line scars that lie wholly in the window, in order of {@link SampleScar#truthId}
 */
record FirstSurvey(List<Bed> beds, List<Channel> channels, List<SampleScar> scars) {
  private static final int HOT_SPOT = 1;
  private static final double HALF_WINDOW_METRES = 400;
  private static final int MOST_SCARS = 48;
  private static final double LEAST_BED_SQUARE_METRES = 25;
  private static final PrecisionModel MILLIMETRES = new PrecisionModel(1_000);

  FirstSurvey {
    beds = List.copyOf(beds);
    channels = List.copyOf(channels);
    scars = List.copyOf(scars);
  }

  /** Takes the window out of the first season of an estuary. */
  static FirstSurvey of(Estuary estuary) {
    GeometryFactory factory = new GeometryFactory();
    Point middle = estuary.plantedHotSpots().get(HOT_SPOT).stretch().getCentroid();
    Envelope envelope = middle.getEnvelopeInternal();
    envelope.expandBy(HALF_WINDOW_METRES);
    Geometry window = factory.toGeometry(envelope);
    List<Bed> beds = new ArrayList<>();
    for (Bed bed : estuary.beds()) {
      beds.addAll(parts(bed, cut(bed.geometry(), window)));
    }
    List<Channel> channels = new ArrayList<>();
    for (Channel channel : estuary.channels()) {
      Geometry inside = cut(channel.geometry(), window);
      if (inside.getLength() > 0) {
        channels.add(channel.withGeometry(inside));
      }
    }
    List<SampleScar> scars =
        estuary
            .scars(0)
            .filter(scar -> scar.widthMetres().isPresent())
            .filter(scar -> window.contains(scar.geometry()))
            .limit(MOST_SCARS)
            .toList();
    return new FirstSurvey(beds, channels, scars);
  }

  private static Geometry cut(Geometry geometry, Geometry window) {
    return OverlayNG.overlay(geometry, window, OverlayNG.INTERSECTION, MILLIMETRES);
  }

  /** What the window leaves of a bed, each part a bed of its own; slivers are left out. */
  private static List<Bed> parts(Bed bed, Geometry cut) {
    List<Polygon> areas = new ArrayList<>();
    PolygonExtracter.getPolygons(cut, areas);
    List<Bed> parts = new ArrayList<>();
    for (Polygon area : areas) {
      if (area.getArea() >= LEAST_BED_SQUARE_METRES) {
        String id = parts.isEmpty() ? bed.id() : bed.id() + "-" + (parts.size() + 1);
        parts.add(new Bed(id, bed.ref(), area, bed.species(), bed.texture(), bed.notes()));
      }
    }
    return parts;
  }
}
