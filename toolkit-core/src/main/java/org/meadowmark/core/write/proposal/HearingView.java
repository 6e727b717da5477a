package org.meadowmark.core.write.proposal;

import java.util.List;
import java.util.Map;

/** What the template of the hearing paper shows; {@code css} and {@code map} are made here. */
record HearingView(
    Map<String, String> t,
    String css,
    String title,
    String description,
    String surveyLine,
    List<HearingAnswer> answers,
    String map,
    String mapCaption,
    List<Area> areas,
    List<String> areasLeft,
    List<Segment> segments,
    List<ZoneRow> zones,
    List<String> cautions,
    String inputs,
    String seed) {

  record Area(
      String name,
      String bed,
      String unknown,
      String scarred,
      String share,
      String severity,
      String patches) {}

  record Segment(
      String rank, String name, String scars, String rate, String interval, String score) {}

  record ZoneRow(String id, String length, String covered, String share, String marks) {}

  boolean hasSegments() {
    return !segments.isEmpty();
  }

  boolean hasZones() {
    return !zones.isEmpty();
  }
}
