package org.meadowmark.core.project;

import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.check.FindingLog;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.SurveyInputException;

/**
 * Looks whether each layer lies where its reference system and the other layers say it should.
 *
 * <p>Nothing is corrected by guessing. A layer in degrees is refused as swapped where most of its
 * latitudes are beyond 90°, or where it lies apart from the other layers but would lie on them with
 * its ordinates swapped. The comparison is with the layers in projected systems, where there are
 * any: those cannot be swapped in this way. Layers that are all swapped alike, and places where
 * longitude and latitude are nearly the same number, cannot be told. A layer of which most lies
 * outside its system's {@link GeographicDomain} is refused; single features there are listed and
 * kept. A layer that lies apart from all others either way is a warning.
 */
final class PlacementCheck {
  private static final double NEAR_DEGREES = 1;

  private final FindingLog log;

  PlacementCheck(FindingLog log) {
    this.log = log;
  }

  /**
   * Checks all layers.
   *
   * @throws SurveyInputException if a layer cannot lie where it says
   */
  void check(List<LayerPlace> places) {
    List<LayerPlace> filled = places.stream().filter(place -> place.size() > 0).toList();
    filled.forEach(PlacementCheck::refuseImpossibleDegrees);
    filled.forEach(place -> refuseOrListApart(place, filled));
    filled.forEach(this::checkDomain);
    noteDifferentSystems(filled);
  }

  private static void refuseImpossibleDegrees(LayerPlace place) {
    if (!place.crs().isGeographic()) {
      return;
    }
    int beyondPole = 0;
    int notDegrees = 0;
    for (var feature : place.layer().features()) {
      Geometry geometry = feature.geometry();
      Envelope box = geometry.getEnvelopeInternal();
      boolean northFirst = place.crs().northFirst();
      double longitude = northFirst ? farthest(box, false) : farthest(box, true);
      double latitude = northFirst ? farthest(box, true) : farthest(box, false);
      if (longitude > 360) {
        notDegrees++;
      } else if (latitude > 90) {
        beyondPole++;
      }
    }
    if (2 * notDegrees > place.size()) {
      throw refused(
          place,
          FindingCode.OUTSIDE_CRS_DOMAIN,
          "the coordinates are not degrees though the layer is said to be in "
              + place.crs().label(),
          "state the projected system they are in with crs = \"EPSG:n\" for the layer or --crs "
              + place.role().key()
              + "=EPSG:n");
    }
    if (2 * beyondPole > place.size()) {
      throw refused(
          place,
          FindingCode.AXES_SWAPPED,
          "latitudes are beyond 90°, so latitude and longitude seem swapped",
          swapAdvice(place));
    }
  }

  private static double farthest(Envelope box, boolean first) {
    return first
        ? Math.max(Math.abs(box.getMinX()), Math.abs(box.getMaxX()))
        : Math.max(Math.abs(box.getMinY()), Math.abs(box.getMaxY()));
  }

  private void refuseOrListApart(LayerPlace place, List<LayerPlace> all) {
    List<LayerPlace> others = all.stream().filter(other -> other != place).toList();
    if (others.isEmpty() || isNear(place.extent(), others)) {
      return;
    }
    List<LayerPlace> projected =
        others.stream().filter(other -> !other.crs().isGeographic()).toList();
    List<LayerPlace> trusted = projected.isEmpty() ? others : projected;
    if (place.crs().isGeographic() && isNear(swapped(place.extent()), trusted)) {
      throw refused(
          place,
          FindingCode.AXES_SWAPPED,
          "the layer lies apart from the other layers, but on them if latitude and longitude are"
              + " swapped",
          swapAdvice(place));
    }
    log.add(
        new Finding(
            FindingCode.CRS_MISMATCH,
            Level.WARNING,
            Treatment.KEPT,
            place.role(),
            place.ref(),
            "the layer lies apart from all other layers",
            "kept; check its reference system (" + place.crs().label() + ")"));
  }

  private static boolean isNear(Envelope extent, List<LayerPlace> others) {
    Envelope around = new Envelope(extent);
    around.expandBy(NEAR_DEGREES);
    return others.stream().anyMatch(other -> around.intersects(other.extent()));
  }

  private static Envelope swapped(Envelope extent) {
    return extent.isNull()
        ? extent
        : new Envelope(extent.getMinY(), extent.getMaxY(), extent.getMinX(), extent.getMaxX());
  }

  private void checkDomain(LayerPlace place) {
    GeographicDomain domain = GeographicDomain.of(place.crs().crs());
    long outside = place.countOutside(domain);
    if (2 * outside > place.size()) {
      throw refused(
          place,
          FindingCode.OUTSIDE_CRS_DOMAIN,
          outside
              + " of "
              + place.size()
              + " features lie far outside the area of use of "
              + place.crs().label(),
          "state the right reference system with crs = \"EPSG:n\" for the layer or --crs "
              + place.role().key()
              + "=EPSG:n");
    }
    for (int i = 0; outside > 0 && i < place.size(); i++) {
      if (!place.isWithin(i, domain)) {
        log.add(
            new Finding(
                FindingCode.OUTSIDE_CRS_DOMAIN,
                Level.WARNING,
                Treatment.KEPT,
                place.role(),
                place.layer().features().get(i).ref(),
                "the feature lies far outside the area of use of " + place.crs().label(),
                "used if it can be projected; check its coordinates"));
      }
    }
  }

  private void noteDifferentSystems(List<LayerPlace> filled) {
    Optional<LayerPlace> beds =
        filled.stream().filter(place -> place.role() == LayerRole.BEDS).findFirst();
    Optional<LayerPlace> reference = beds.or(() -> filled.stream().findFirst());
    for (LayerPlace place : filled) {
      ResolvedCrs first = reference.orElseThrow().crs();
      if (!place.crs().label().equals(first.label())) {
        log.add(
            new Finding(
                FindingCode.CRS_MISMATCH,
                Level.NOTE,
                Treatment.KEPT,
                place.role(),
                place.ref(),
                "the layer is in "
                    + place.crs().label()
                    + ", the layer of "
                    + reference.get().role().key()
                    + " in "
                    + first.label(),
                place.crs().hasDatumOf(first)
                    ? "all layers are brought to the analysis grid"
                    : "all layers are brought to the analysis grid; the shift between their datums"
                        + " may be wrong by a metre or more"));
      }
    }
  }

  private static String swapAdvice(LayerPlace place) {
    String order =
        place.layer().crs().axisOrder() == AxisOrder.EAST_FIRST ? "as-defined" : "east-first";
    return "set axis_order = \""
        + order
        + "\" for the layer in the survey file or --axis-order "
        + place.role().key()
        + "="
        + order
        + ", or correct the file";
  }

  private static SurveyInputException refused(
      LayerPlace place, FindingCode code, String problem, String action) {
    return new SurveyInputException(
        new Finding(
            code, Level.ERROR, Treatment.REFUSED, place.role(), place.ref(), problem, action));
  }
}
