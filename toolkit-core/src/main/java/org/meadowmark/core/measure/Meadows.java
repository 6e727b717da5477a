package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.survey.Parameters;

/**
 * The meadows of a survey, touching beds joined.
 *
 * @param small meadows that can be cut side by side
 * @param vast meadows with so many scars that one at a time is enough
 * @param footprintIndex positions of all scars
 * @param areTiled whether all meadows are cut in tiles
 */
record Meadows(
    List<GrassGroup> small, List<GrassGroup> vast, STRtree footprintIndex, boolean areTiled) {

  /**
   * Scars near a meadow that is still small. Where all meadows are, overlapping scars of the whole
   * survey are united; scars of a vast one hang together in unions that take longer and more memory
   * than tiles.
   */
  static final int MOST_SCARS_OF_SMALL = 50_000;

  static Meadows of(
      MetricSurvey survey,
      Parameters parameters,
      List<Footprint> footprints,
      int mostScarsOfSmall,
      Optional<Boolean> tiled) {
    STRtree index = StrTreeQuery.footprints(footprints);
    List<GrassGroup> small = new ArrayList<>();
    List<GrassGroup> vast = new ArrayList<>();
    for (GrassGroup group : GrassGroup.of(survey.beds(), parameters.sliverToleranceMetres())) {
      Envelope extent = group.geometry().getEnvelopeInternal();
      boolean many = StrTreeQuery.<Integer>items(index, extent).size() > mostScarsOfSmall;
      (many ? vast : small).add(group);
    }
    return new Meadows(List.copyOf(small), List.copyOf(vast), index, tiled.orElse(!vast.isEmpty()));
  }
}
