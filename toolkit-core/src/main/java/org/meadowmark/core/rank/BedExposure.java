package org.meadowmark.core.rank;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.meadowmark.core.measure.Barriers;
import org.meadowmark.core.measure.PolygonTiles;
import org.meadowmark.core.measure.SurveyedArea;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.rank.evidence.BedsInReach;

/** Surveyed bed within reach of each segment and not parted from it by a barrier, by class. */
final class BedExposure {
  private static final String UNKNOWN = "unknown";

  private final MetricSurvey survey;
  private final double reachMetres;
  private final List<String> classes = new ArrayList<>();
  private final List<PolygonTiles> tiles = new ArrayList<>();

  /**
   * Sorts the beds of a survey by class.
   *
   * @param severityByBed class of each bed, by bed id; what is not there is unknown
   * @param knownClasses keys of the classes, lightest first
   */
  BedExposure(
      MetricSurvey survey,
      Map<String, String> severityByBed,
      List<String> knownClasses,
      double reachMetres) {
    this.survey = survey;
    this.reachMetres = reachMetres;
    classes.addAll(knownClasses);
    classes.add(UNKNOWN);
    SurveyedArea surveyed = new SurveyedArea(survey.surveyedArea());
    List<List<Geometry>> beds = new ArrayList<>();
    classes.forEach(key -> beds.add(new ArrayList<>()));
    List<Geometry> parts =
        survey.beds().parallelStream().map(bed -> surveyed.part(bed.geometry())).toList();
    for (int i = 0; i < parts.size(); i++) {
      String key = severityByBed.getOrDefault(survey.beds().get(i).id(), UNKNOWN);
      int place = classes.indexOf(key);
      beds.get(place < 0 ? classes.size() - 1 : place).add(parts.get(i));
    }
    beds.forEach(list -> tiles.add(new PolygonTiles(list)));
  }

  List<BedsInReach> of(List<ChannelSegment> segments, Barriers barriers, Progress progress) {
    return segments.parallelStream()
        .map(
            segment -> {
              BedsInReach beds = of(segment, barriers);
              progress.advance(1);
              return beds;
            })
        .toList();
  }

  private BedsInReach of(ChannelSegment segment, Barriers barriers) {
    Coordinate centre = segment.geometry().getEnvelopeInternal().centre();
    double reach = reachMetres * survey.scale().lengthFactor(centre.x, centre.y);
    Geometry around =
        barriers.reachable(BufferOp.bufferOp(segment.geometry(), reach), segment.geometry());
    double squareMetres = survey.scale().areaFactor(centre.x, centre.y) * Hectare.SQUARE_METRES;
    double[] hectares = new double[classes.size()];
    if (!around.isEmpty()) {
      for (int i = 0; i < hectares.length; i++) {
        hectares[i] = tiles.get(i).areaInside(around) / squareMetres;
      }
    }
    return BedsInReach.of(classes, hectares);
  }
}
