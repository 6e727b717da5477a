package org.meadowmark.core.write.proposal;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.write.AssessedSurvey;

/** Makes the sheets of an assessed survey. */
public final class SurveySheets {
  private SurveySheets() {}

  /**
   * {@return a sheet for each zone of the plan, in its order}
   *
   * @param assessed results, with the zones proposed and the ranking that speaks for them
   * @param inputs files that were read
   * @param toolVersion version of the program
   */
  public static List<ZoneSheet> of(
      AssessedSurvey assessed, List<SheetInput> inputs, String toolVersion) {
    SheetSurvey survey = survey(assessed, inputs, toolVersion);
    Map<String, RankedSegment> segments = new HashMap<>();
    assessed.ranking().segments().forEach(ranked -> segments.put(ranked.segment().id(), ranked));
    SheetText text = SheetText.english();
    return assessed.zones().zones().stream()
        .map(zone -> sheet(assessed, survey, zone, segments, text))
        .toList();
  }

  /** What the sheets of a survey share. */
  static SheetSurvey survey(AssessedSurvey assessed, List<SheetInput> inputs, String toolVersion) {
    Map<String, String> severity = new HashMap<>();
    assessed
        .measurement()
        .beds()
        .forEach(bed -> severity.put(bed.bed().id(), bed.damage().severityKey()));
    return new SheetSurvey(
        assessed.definition().name(),
        assessed.definition().date(),
        assessed.survey(),
        severity,
        assessed.references(),
        inputs,
        assessed.definition().parameters().seed(),
        toolVersion);
  }

  private static ZoneSheet sheet(
      AssessedSurvey assessed,
      SheetSurvey survey,
      Zone zone,
      Map<String, RankedSegment> segments,
      SheetText text) {
    List<RankedSegment> members =
        zone.segmentIds().stream().map(segments::get).filter(Objects::nonNull).toList();
    String channel =
        members.stream()
            .map(member -> member.segment().channel())
            .distinct()
            .collect(Collectors.joining(", "));
    ZoneEvidence evidence = new ZoneEvidence(zone, members, assessed.references(), text);
    return new ZoneSheet(
        survey, assessed.zones(), zone, channel, evidence.rows(), evidence.uncertainty());
  }
}
