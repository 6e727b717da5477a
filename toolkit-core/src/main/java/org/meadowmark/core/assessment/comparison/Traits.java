package org.meadowmark.core.assessment.comparison;

import org.meadowmark.core.change.comparability.SurveyTraits;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.ComparedSurveys.ReadSurvey;

/** What decides whether a survey can be compared, from what was read of it. */
final class Traits {
  private static final double MILLIMETRES = 1_000;

  private Traits() {}

  /** Traits of a survey that has a date. */
  static SurveyTraits of(ReadSurvey read, MetricSurvey mapped) {
    SurveyDefinition definition = read.definition();
    return new SurveyTraits(
        definition.name(),
        definition.date().orElseThrow(),
        definition.facts(),
        definition.parameters().pixelSizeMetres(),
        definition.parameters().position(),
        read.counts().stream()
            .filter(count -> count.role() == LayerRole.SCARS)
            .map(LayerCount::crs)
            .findFirst()
            .orElse(""),
        channelDigest(mapped));
  }

  private static int channelDigest(MetricSurvey survey) {
    int digest = 1;
    for (Channel channel : survey.channels()) {
      for (var point : channel.geometry().getCoordinates()) {
        digest = 31 * digest + Long.hashCode(Math.round(MILLIMETRES * point.x));
        digest = 31 * digest + Long.hashCode(Math.round(MILLIMETRES * point.y));
      }
    }
    return digest;
  }
}
