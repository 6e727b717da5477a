package org.meadowmark.core.write.proposal;

import java.util.List;
import java.util.Map;

/**
 * What the template shows: text only, in the order in which it stands. {@code css}, {@code map} and
 * {@code drawing} are markup made here; everything else is escaped by the template.
 */
record SheetView(
    Map<String, String> t,
    String css,
    String title,
    String description,
    String surveyLine,
    String planLine,
    List<KeyFigure> figures,
    List<Device> devices,
    String map,
    String mapCaption,
    List<String> mapCapped,
    List<Evidence> evidence,
    String markersCaption,
    List<Position> markers,
    List<String> worth,
    List<Passage> passages,
    List<String> answers,
    String method,
    String choice,
    List<String> uncertainty,
    List<String> gaps,
    List<String> cautions,
    String inputs,
    String seed) {

  record KeyFigure(String value, String label, boolean missing) {}

  record Device(
      String drawing,
      String device,
      String share,
      String reason,
      String legal,
      boolean legalMissing,
      String source) {}

  record Evidence(String label, String value, String unit, String note, boolean missing) {}

  record Position(
      String id,
      String latitude,
      String longitude,
      String easting,
      String northing,
      String faces,
      String why) {}

  record Passage(String usual, String slow, String extra) {}

  boolean hasDevices() {
    return !devices.isEmpty();
  }

  boolean hasEvidence() {
    return !evidence.isEmpty();
  }

  boolean hasMarkers() {
    return !markers.isEmpty();
  }

  boolean hasPassages() {
    return !passages.isEmpty();
  }
}
