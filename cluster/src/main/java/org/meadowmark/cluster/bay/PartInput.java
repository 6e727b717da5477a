package org.meadowmark.cluster.bay;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Coordinate;
import org.meadowmark.core.measure.PartEvidence;
import org.meadowmark.core.measure.PartMeasurer;
import org.meadowmark.core.measure.PartRules;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.partition.SurveyPart;

/**
 * A part of a bay with all that measuring it takes.
 *
 * @param grid label of the analysis grid
 * @param scars its scars
 * @param depths water depth at the middle of each
 * @param beds its beds
 * @param managementAreas areas of the whole bay
 * @param surveyedArea what was looked at in the whole bay
 * @param barriers land and structures of the whole bay
 * @param scarCount scars of the whole bay
 * @param tiled whether meadows are cut in tiles
 */
record PartInput(
    String grid,
    List<Scar> scars,
    List<OptionalDouble> depths,
    List<Bed> beds,
    List<MapArea> managementAreas,
    List<MapArea> surveyedArea,
    List<MapArea> barriers,
    int scarCount,
    boolean tiled) {

  static PartInput of(SurveyPart part, MetricSurvey bay, boolean tiled) {
    MetricSurvey own = part.of(bay);
    List<OptionalDouble> depths = new ArrayList<>();
    for (Scar scar : own.scars()) {
      Coordinate middle = middle(scar);
      depths.add(bay.depth().depthMetres(middle.x, middle.y));
    }
    return new PartInput(
        bay.gridLabel(),
        own.scars(),
        depths,
        own.beds(),
        own.managementAreas(),
        own.surveyedArea(),
        own.barriers(),
        bay.scars().size(),
        tiled);
  }

  private static Coordinate middle(Scar scar) {
    return scar.geometry().getEnvelopeInternal().centre();
  }

  /** Measures the part. */
  PartEvidence measure(SurveySpec survey) {
    Map<Coordinate, OptionalDouble> known = new HashMap<>();
    for (int i = 0; i < scars.size(); i++) {
      known.put(middle(scars.get(i)), depths.get(i));
    }
    MetricSurvey part =
        new MetricSurvey(
            grid,
            "",
            scars,
            beds,
            List.of(),
            managementAreas,
            surveyedArea,
            barriers,
            (x, y) -> known.getOrDefault(new Coordinate(x, y), OptionalDouble.empty()),
            Grids.scale(grid, survey.parameters()));
    return new PartMeasurer(
            part,
            survey.parameters(),
            SurveySpec.tables(),
            PartRules.of(scarCount, tiled),
            Progress.NONE)
        .measure();
  }
}
