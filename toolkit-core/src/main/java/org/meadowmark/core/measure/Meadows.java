package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.survey.Parameters;

/**
 * The meadows of a survey, touching beds joined.
 *
 * @param small meadows whose scars are cut out in one go
 * @param vast meadows with so many scars that they are cut tile by tile
 * @param footprintIndex positions of all scars
 * @param smallIndex positions of the small meadows' beds
 */
record Meadows(
    List<GrassGroup> small, List<GrassGroup> vast, STRtree footprintIndex, STRtree smallIndex) {

  /** Beyond this the union of a meadow's scars takes longer and more memory than tiles. */
  static final int MOST_SCARS_AT_ONCE = Integer.getInteger("mm.t", 10_000);

  static Meadows of(
      MetricSurvey survey, Parameters parameters, List<Footprint> footprints, int mostScarsAtOnce) {
    STRtree index = StrTreeQuery.positions(footprints.stream().map(Footprint::area).toList());
    List<GrassGroup> small = new ArrayList<>();
    List<GrassGroup> vast = new ArrayList<>();
    for (GrassGroup group : GrassGroup.of(survey.beds(), parameters.sliverToleranceMetres())) {
      Envelope extent = group.geometry().getEnvelopeInternal();
      boolean many = StrTreeQuery.<Integer>items(index, extent).size() > mostScarsAtOnce;
      (many ? vast : small).add(group);
    }
    STRtree smallIndex =
        StrTreeQuery.positions(
            small.stream()
                .flatMap(group -> group.beds().stream())
                .map(bed -> bed.geometry())
                .toList());
    return new Meadows(List.copyOf(small), List.copyOf(vast), index, smallIndex);
  }

  /** Whether a scar may lie in a small meadow. */
  boolean isNearSmall(Footprint footprint) {
    return vast.isEmpty()
        || !StrTreeQuery.items(smallIndex, footprint.area().getEnvelopeInternal()).isEmpty();
  }
}
