package org.meadowmark.core.change.history;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One scar over several surveys, from the first that saw it to the last one made, or to the survey
 * in which it became part of another.
 *
 * @param id date of the first survey that saw it and the scar's id there, so that a later survey
 *     changes no id
 * @param sightings one for each survey, in order of date; the first is seen
 * @param splitFrom history that it was a part of before it was first seen by itself
 * @param mergedInto history that it is a part of since after its last sighting
 */
public record ScarHistory(
    String id, List<Sighting> sightings, Optional<String> splitFrom, Optional<String> mergedInto) {
  /**
   * Refuses a history of which a part is missing, and keeps a copy of the sightings.
   *
   * @param id date of the first survey that saw it and the scar's id there, so that a later survey
   *     changes no id
   * @param sightings one for each survey, in order of date; the first is seen
   * @param splitFrom history that it was a part of before it was first seen by itself
   * @param mergedInto history that it is a part of since after its last sighting
   * @throws NullPointerException if anything is null
   */
  public ScarHistory {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(splitFrom, "splitFrom");
    Objects.requireNonNull(mergedInto, "mergedInto");
    sightings = List.copyOf(sightings);
  }

  /** {@return number of surveys that saw it} */
  public int timesSeen() {
    return (int) sightings.stream().filter(s -> s.state() == Sighting.State.SEEN).count();
  }

  /**
   * {@return whether it was seen again after a survey that looked and did not see it: scarred again
   * on the same line, or missed in between}
   */
  public boolean reappeared() {
    boolean missed = false;
    for (Sighting sighting : sightings) {
      if (missed && sighting.state() == Sighting.State.SEEN) {
        return true;
      }
      missed |= sighting.state() == Sighting.State.NOT_SEEN;
    }
    return false;
  }
}
