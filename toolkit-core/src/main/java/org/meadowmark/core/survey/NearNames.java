package org.meadowmark.core.survey;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.apache.commons.text.similarity.LevenshteinDistance;

/** Finds what a user may have meant by a name that is not known. */
final class NearNames {
  private static final int FEWEST_EDITS = 2;
  private static final int LETTERS_AN_EDIT = 3;

  private NearNames() {}

  /**
   * "use one of: …", led by the names close to the one given where there are any.
   *
   * @param name the unknown name
   * @param known all known names
   */
  static String advice(String name, Collection<String> known) {
    List<String> near = near(name, known);
    return (near.isEmpty() ? "" : "did you mean " + String.join(" or ", near) + "? ")
        + "use one of: "
        + String.join(", ", known);
  }

  private static List<String> near(String name, Collection<String> known) {
    String lower = name.toLowerCase(Locale.ROOT).replace('-', '_').strip();
    int edits = Math.max(FEWEST_EDITS, lower.length() / LETTERS_AN_EDIT);
    LevenshteinDistance distance = new LevenshteinDistance(edits);
    record Candidate(String name, int edits) {}
    return known.stream()
        .map(k -> new Candidate(k, distance.apply(lower, k.replace('-', '_'))))
        .filter(c -> c.edits() >= 0)
        .sorted(Comparator.comparingInt(Candidate::edits).thenComparing(Candidate::name))
        .limit(3)
        .map(Candidate::name)
        .toList();
  }
}
