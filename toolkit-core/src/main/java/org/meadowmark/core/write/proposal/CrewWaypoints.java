package org.meadowmark.core.write.proposal;

import io.jenetics.jpx.GPX;
import io.jenetics.jpx.Route;
import io.jenetics.jpx.WayPoint;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.meadowmark.core.plan.RepairScar;
import org.meadowmark.core.plan.RepairSeason;
import org.meadowmark.core.plan.layout.PlantingUnit;
import org.meadowmark.core.write.XmlText;

/**
 * A season as GPX 1.1: a waypoint for each unit, named by scar and number, and a route through the
 * scars in the order of visits. GPX is in degrees on WGS 84; degrees of the grid's own datum are
 * written as they are, which for the datums in use differ by a metre or two.
 */
final class CrewWaypoints {
  private final GridPlaces places;
  private final Map<String, List<PlantingUnit>> unitsByScar;

  CrewWaypoints(GridPlaces places, Map<String, List<PlantingUnit>> unitsByScar) {
    this.places = places;
    this.unitsByScar = new HashMap<>(unitsByScar);
  }

  /** The file. */
  byte[] of(RepairSeason season) throws IOException {
    GPX.Builder gpx = GPX.builder("Meadowmark");
    gpx.metadata(
        metadata ->
            metadata
                .name("Planting season " + season.number())
                .desc("Planting units on " + places.datum() + "; not for navigation"));
    Route.Builder route = Route.builder().name("Order of visits, season " + season.number());
    for (RepairScar scar : season.scars()) {
      Coordinate middle = scar.measure().scar().geometry().getEnvelopeInternal().centre();
      route.addPoint(at(middle, scar.scarId(), scar.units() + " units, site " + scar.siteId()));
      for (PlantingUnit unit : unitsByScar.getOrDefault(scar.scarId(), List.of())) {
        gpx.addWayPoint(
            at(
                unit.geometry().getCoordinate(),
                unit.scarId() + "/" + unit.number(),
                "row " + unit.row()));
      }
    }
    gpx.addRoute(route.build());
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    GPX.Writer.of(new GPX.Writer.Indent("  ")).write(gpx.build(), bytes);
    return bytes.toByteArray();
  }

  private WayPoint at(Coordinate place, String name, String description) {
    GridPlaces.Degrees degrees = places.at(place.x, place.y);
    return WayPoint.builder()
        .lat(degrees.latitude())
        .lon(degrees.longitude())
        .name(XmlText.legal(name))
        .desc(description)
        .build();
  }
}
