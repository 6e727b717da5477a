package org.meadowmark.core.change;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.measure.SurveyedArea;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;

/**
 * Bed of the later survey that two surveys looked at: what new scars are counted on.
 *
 * @param surveyedArea what both looked at; empty where both looked everywhere
 * @param hectaresByScope bed inside it, by scope in the order of {@link Scopes#all}
 * @param earlierHectares bed of the earlier survey inside the earlier surveyed area
 * @param laterHectares bed of the later survey inside the later surveyed area
 * @param sameBeds whether both surveys have the same beds, shape by shape
 */
public record CommonGround(
    List<MapArea> surveyedArea,
    Map<Scope, Double> hectaresByScope,
    double earlierHectares,
    double laterHectares,
    boolean sameBeds) {

  /**
   * Compares two surveys on one grid. Time grows with beds times the areas that they touch.
   *
   * @param earlier the earlier survey
   * @param later the later survey, whose beds and management areas count
   * @return what both looked at
   */
  public static CommonGround of(MetricSurvey earlier, MetricSurvey later) {
    List<MapArea> common = common(earlier, later);
    SurveyedArea both = new SurveyedArea(common);
    Scopes scopes = new Scopes(later.managementAreas());
    Map<Scope, Double> hectares = new LinkedHashMap<>();
    scopes.all().forEach(scope -> hectares.put(scope, 0.0));
    for (Bed bed : later.beds()) {
      Geometry part = both.part(bed.geometry());
      if (!part.isEmpty()) {
        add(part, squareMetresPerHectare(later, bed), scopes, hectares);
      }
    }
    return new CommonGround(
        common, hectares, hectares(earlier), hectares(later), sameBeds(earlier, later));
  }

  /** {@return hectares of bed in common} */
  public double hectares() {
    return hectaresByScope.get(Scope.WHOLE);
  }

  /**
   * {@return share of the smaller of the two surveyed bed areas that is common; 1 where there is no
   * bed}
   */
  public double commonShare() {
    double smaller = Math.min(earlierHectares, laterHectares);
    return smaller > 0 ? Math.min(1, hectares() / smaller) : 1;
  }

  private static List<MapArea> common(MetricSurvey earlier, MetricSurvey later) {
    if (earlier.surveyedArea().isEmpty()) {
      return later.surveyedArea();
    }
    if (later.surveyedArea().isEmpty()) {
      return earlier.surveyedArea();
    }
    Geometry shape =
        OverlayNGRobust.overlay(
            union(earlier.surveyedArea()), union(later.surveyedArea()), OverlayNG.INTERSECTION);
    return List.of(new MapArea("common", new FeatureRef("", "", "common"), shape, ""));
  }

  private static Geometry union(List<MapArea> areas) {
    return UnaryUnionOp.union(areas.stream().map(MapArea::geometry).toList());
  }

  private static double squareMetresPerHectare(MetricSurvey survey, Bed bed) {
    Coordinate centre = bed.geometry().getEnvelopeInternal().centre();
    return Hectare.SQUARE_METRES * survey.scale().areaFactor(centre.x, centre.y);
  }

  private static double hectares(MetricSurvey survey) {
    SurveyedArea surveyed = new SurveyedArea(survey.surveyedArea());
    double sum = 0;
    for (Bed bed : survey.beds()) {
      sum += surveyed.part(bed.geometry()).getArea() / squareMetresPerHectare(survey, bed);
    }
    return sum;
  }

  private static void add(
      Geometry part, double squareMetres, Scopes scopes, Map<Scope, Double> hectares) {
    hectares.merge(Scope.WHOLE, part.getArea() / squareMetres, Double::sum);
    List<Scope> all = scopes.all();
    List<Geometry> met = new ArrayList<>();
    for (int i = 0; i < scopes.shapes().size(); i++) {
      PreparedGeometry shape = scopes.shapes().get(i);
      if (shape.intersects(part)) {
        Geometry inside =
            shape.covers(part)
                ? part
                : OverlayNGRobust.overlay(part, shape.getGeometry(), OverlayNG.INTERSECTION);
        hectares.merge(all.get(i), inside.getArea() / squareMetres, Double::sum);
        met.add(shape.getGeometry());
      }
    }
    if (hectares.containsKey(Scope.OUTSIDE)) {
      Geometry outside =
          met.isEmpty()
              ? part
              : OverlayNGRobust.overlay(part, UnaryUnionOp.union(met), OverlayNG.DIFFERENCE);
      hectares.merge(Scope.OUTSIDE, outside.getArea() / squareMetres, Double::sum);
    }
  }

  private static boolean sameBeds(MetricSurvey earlier, MetricSurvey later) {
    if (earlier.beds().size() != later.beds().size()) {
      return false;
    }
    for (int i = 0; i < earlier.beds().size(); i++) {
      if (!earlier.beds().get(i).geometry().equalsExact(later.beds().get(i).geometry())) {
        return false;
      }
    }
    return true;
  }
}
