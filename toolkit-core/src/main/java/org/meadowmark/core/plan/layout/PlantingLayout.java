package org.meadowmark.core.plan.layout;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.survey.PlantingPattern;

/**
 * Units of each scar: in rows along the scar, those inside beds. The count of {@link #count} is the
 * number of units that {@link #units} makes.
 */
public final class PlantingLayout {
  /** Footprints are measured by overlays, which round. */
  private static final double WHOLE = 1 - 1e-6;

  private final GroundScale scale;
  private final GrassAreas grass;
  private final PlantingPattern pattern;
  private final double spacingMetres;
  private final GeometryFactory factory = new GeometryFactory();

  /**
   * A layout for a survey.
   *
   * @param survey beds and scale
   * @param pattern how rows lie
   * @param spacingMetres distance of units on the ground, more than 0
   */
  public PlantingLayout(MetricSurvey survey, PlantingPattern pattern, double spacingMetres) {
    if (!(spacingMetres > 0)) {
      throw new IllegalArgumentException("spacing must be more than 0: " + spacingMetres);
    }
    this.scale = survey.scale();
    this.grass = new GrassAreas(survey.beds());
    this.pattern = pattern;
    this.spacingMetres = spacingMetres;
  }

  /**
   * {@return rows across a scar; for a polygon 0, since its rows differ in length}
   *
   * @param scar scar on the analysis grid
   */
  public int rows(Scar scar) {
    return scar.isLine() ? rowsOn(scar).rows(gridWidth(scar)) : 0;
  }

  /**
   * {@return number of units of a scar inside beds; 0 where none of its footprint is}
   *
   * @param measure the scar with its footprint inside beds
   */
  public long count(ScarMeasure measure) {
    Scar scar = measure.scar();
    if (measure.footprintInBedsSquareMetres() <= 0) {
      return 0;
    }
    if (scar.isLine() && isWhole(measure)) {
      return rowsOn(scar).count(scar.geometry(), gridWidth(scar));
    }
    long[] count = {0};
    inBeds(measure, (row, place) -> count[0]++);
    return count[0];
  }

  /**
   * {@return units of a scar inside beds, along its rows, numbered from 1; none where none of its
   * footprint is}
   *
   * @param measure the scar with its footprint inside beds
   */
  public List<PlantingUnit> units(ScarMeasure measure) {
    List<PlantingUnit> units = new ArrayList<>();
    if (measure.footprintInBedsSquareMetres() <= 0) {
      return units;
    }
    String id = measure.scar().id();
    inBeds(
        measure,
        (row, place) ->
            units.add(new PlantingUnit(id, units.size() + 1, row, factory.createPoint(place))));
    return units;
  }

  private void inBeds(ScarMeasure measure, UnitRows.Sink sink) {
    Scar scar = measure.scar();
    UnitRows.Sink clipped =
        isWhole(measure)
            ? sink
            : (row, place) -> {
              if (grass.holds(place)) {
                sink.unit(row, place);
              }
            };
    if (scar.isLine()) {
      rowsOn(scar).along(scar.geometry(), gridWidth(scar), clipped);
    } else {
      rowsOn(scar).inside(scar.geometry(), clipped);
    }
  }

  private static boolean isWhole(ScarMeasure measure) {
    return measure.footprintInBedsSquareMetres() >= WHOLE * measure.footprintSquareMetres();
  }

  private UnitRows rowsOn(Scar scar) {
    return new UnitRows(pattern, spacingMetres * factor(scar.geometry()));
  }

  private double gridWidth(Scar scar) {
    return scar.widthMetres() * factor(scar.geometry());
  }

  private double factor(Geometry geometry) {
    Coordinate middle = geometry.getEnvelopeInternal().centre();
    return scale.lengthFactor(middle.x, middle.y);
  }
}
