package org.meadowmark.samples;

import java.util.List;

/** Invented names. */
final class Names {
  static final String PLACE = "Quillmere Sound";
  static final String MAIN_CHANNEL = "Quillmere Channel";
  static final String RAMP_CHANNEL = "Tarrowend Ramp Channel";

  private static final List<String> STEMS =
      List.of(
          "Fennick",
          "Odderly",
          "Brindlow",
          "Skerrow",
          "Wythel",
          "Pellan",
          "Corrowen",
          "Ostrel",
          "Harrick",
          "Sennow",
          "Twillet",
          "Marrowby",
          "Dunnock",
          "Yarrol",
          "Kessick",
          "Bramlet",
          "Lorrin",
          "Gannow",
          "Thessel",
          "Ulverow");
  private static final List<String> KINDS = List.of("Run", "Gut", "Slough", "Creek", "Reach");
  private static final List<String> AREAS =
      List.of(
          "West Quillmere Flats",
          "Skerrow Bank",
          "Tarrowend Shallows",
          "Pellan Middle Ground",
          "East Quillmere Flats",
          "Odderly Shore");

  private Names() {}

  static String channel(int number) {
    String stem = STEMS.get(number % STEMS.size());
    String kind = KINDS.get((number + number / STEMS.size()) % KINDS.size());
    int round = number / (STEMS.size() * KINDS.size());
    return stem + " " + kind + (round == 0 ? "" : " " + (round + 1));
  }

  static String inlet(int number) {
    return STEMS.get((number * 7 + 3) % STEMS.size())
        + " Inlet"
        + (number < 20 ? "" : " " + number);
  }

  static String area(int number) {
    return AREAS.get(number);
  }
}
