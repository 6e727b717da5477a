package org.meadowmark.core.write.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Colours of the page by name, for day and for night. Beds are one hue that goes away from the
 * water with severity; causes can be told apart, and from all that scars lie on, with each common
 * kind of colour blindness.
 *
 * @param colours {@code #RRGGBB} by name
 */
record ReportPalette(Map<String, String> colours) {
  /** Tints of beds. */
  static final int BEDS = 4;

  /** Colours of causes. */
  static final int SCARS = 6;

  static final ReportPalette DAY =
      of(
          List.of("#E9F0CF", "#C5DDB3", "#8FC09C", "#4F9581"),
          List.of("#0F1494", "#937C2D", "#AB3240", "#894CAF", "#6F1900", "#3A3847"),
          Map.ofEntries(
              Map.entry("page", "#EEF3F4"),
              Map.entry("paper", "#FCFDFC"),
              Map.entry("ink", "#1D3344"),
              Map.entry("soft", "#4B606D"),
              Map.entry("line", "#C8D5DA"),
              Map.entry("accent", "#17506B"),
              Map.entry("caution", "#8A3A06"),
              Map.entry("mark-row", "#FFF0BF"),
              Map.entry("water", "#EAF3F6"),
              Map.entry("land", "#EDE4CF"),
              Map.entry("land-edge", "#A8977A"),
              Map.entry("graticule", "#B4C8D1"),
              Map.entry("bed-edge", "#5B8E78"),
              Map.entry("bed-unknown", "#E3E6E4"),
              Map.entry("patch", "#14532D"),
              Map.entry("gap", "#1D3344"),
              Map.entry("gap-case", "#FFFFFF"),
              Map.entry("segment-first", "#8A1C5B"),
              Map.entry("segment-next", "#5C6FB1"),
              Map.entry("segment-rest", "#7F929C"),
              Map.entry("zone", "#F6C21C"),
              Map.entry("zone-line", "#7A4B00"),
              Map.entry("area", "#4B606D"),
              Map.entry("repair", "#00543C"),
              Map.entry("repair-case", "#FFFFFF"),
              Map.entry("mark", "#C24A00"),
              Map.entry("mark-case", "#FFFFFF"),
              Map.entry("chosen", "#B3005E")));

  static final ReportPalette NIGHT =
      of(
          List.of("#17343A", "#1D4A47", "#286658", "#3B876C"),
          List.of("#F7C426", "#E55CF5", "#53F692", "#DF7C3B", "#D4B6F3", "#E0F7FB"),
          Map.ofEntries(
              Map.entry("page", "#0B1720"),
              Map.entry("paper", "#11212C"),
              Map.entry("ink", "#E6EFF2"),
              Map.entry("soft", "#A9BDC7"),
              Map.entry("line", "#2B4250"),
              Map.entry("accent", "#8CCBE6"),
              Map.entry("caution", "#FFB27A"),
              Map.entry("mark-row", "#3F3611"),
              Map.entry("water", "#0E1F2B"),
              Map.entry("land", "#3A3626"),
              Map.entry("land-edge", "#7A6F50"),
              Map.entry("graticule", "#2C4757"),
              Map.entry("bed-edge", "#3F7466"),
              Map.entry("bed-unknown", "#39434A"),
              Map.entry("patch", "#B8E8C8"),
              Map.entry("gap", "#FFFFFF"),
              Map.entry("gap-case", "#0B1720"),
              Map.entry("segment-first", "#FF8FC7"),
              Map.entry("segment-next", "#9FB0F0"),
              Map.entry("segment-rest", "#6F8794"),
              Map.entry("zone", "#8A6A00"),
              Map.entry("zone-line", "#FFE08A"),
              Map.entry("area", "#A9BDC7"),
              Map.entry("repair", "#7CF0C4"),
              Map.entry("repair-case", "#0B1720"),
              Map.entry("mark", "#FF9A52"),
              Map.entry("mark-case", "#0B1720"),
              Map.entry("chosen", "#FFFFFF")));

  private static ReportPalette of(
      List<String> beds, List<String> scars, Map<String, String> others) {
    Map<String, String> colours = new LinkedHashMap<>();
    for (int i = 0; i < BEDS; i++) {
      colours.put("bed-" + i, beds.get(i));
    }
    for (int i = 0; i < SCARS; i++) {
      colours.put("scar-" + i, scars.get(i));
    }
    List<String> names = new ArrayList<>(others.keySet());
    Collections.sort(names);
    names.forEach(name -> colours.put(name, others.get(name)));
    return new ReportPalette(Collections.unmodifiableMap(colours));
  }

  /** Style of a severity class by its place among the classes, lightest first. */
  static String bedStyle(int place, int classes) {
    int step = classes <= 1 ? 0 : Math.round(place * (BEDS - 1f) / (classes - 1f));
    return "bed-" + Math.max(0, Math.min(step, BEDS - 1));
  }

  /** Style of a cause by its place among the causes. */
  static String scarStyle(int place) {
    return "scar-" + Math.floorMod(place, SCARS);
  }

  /** A colour. */
  String colour(String name) {
    String colour = colours.get(name);
    if (colour == null) {
      throw new IllegalArgumentException("no colour of the report: " + name);
    }
    return colour;
  }

  /** Declarations for a style sheet. */
  String css() {
    return colours.entrySet().stream()
        .map(each -> "--" + each.getKey() + ":" + each.getValue())
        .collect(Collectors.joining(";"));
  }
}
