package org.meadowmark.core.change.history;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.change.match.ChangeClass;

/**
 * What one survey says about one scar.
 *
 * @param date date of the survey
 * @param state whether it saw the scar
 * @param scarId id of the scar in that survey, where it was seen
 * @param lengthMetres ground length there; half the perimeter of a polygon
 * @param widthMetres ground width of a line there
 * @param change its class against the survey before; empty where it was not seen, and in the first
 *     survey
 */
public record Sighting(
    LocalDate date,
    State state,
    Optional<String> scarId,
    OptionalDouble lengthMetres,
    OptionalDouble widthMetres,
    Optional<ChangeClass> change) {

  /** Whether a survey saw a scar. */
  public enum State {
    /** It is mapped. */
    SEEN("seen"),
    /** The place was looked at, and it is not mapped. */
    NOT_SEEN("not seen"),
    /** The place was not looked at. */
    NOT_COMPARABLE("not comparable");

    private final String key;

    State(String key) {
      this.key = key;
    }

    /** {@return name in tables} */
    public String key() {
      return key;
    }
  }

  /**
   * Refuses a sighting of which a part is missing; what is not known is empty.
   *
   * @param date date of the survey
   * @param state whether it saw the scar
   * @param scarId id of the scar in that survey, where it was seen
   * @param lengthMetres ground length there; half the perimeter of a polygon
   * @param widthMetres ground width of a line there
   * @param change its class against the survey before; empty where it was not seen, and in the
   *     first survey
   * @throws NullPointerException if anything is null
   */
  public Sighting {
    Objects.requireNonNull(date, "date");
    Objects.requireNonNull(state, "state");
    Objects.requireNonNull(scarId, "scarId");
    Objects.requireNonNull(lengthMetres, "lengthMetres");
    Objects.requireNonNull(widthMetres, "widthMetres");
    Objects.requireNonNull(change, "change");
  }

  static Sighting without(LocalDate date, State state) {
    return new Sighting(
        date,
        state,
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty());
  }
}
