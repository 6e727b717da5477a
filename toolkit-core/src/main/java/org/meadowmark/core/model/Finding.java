package org.meadowmark.core.model;

import java.util.Comparator;
import java.util.Objects;

/**
 * One thing that is wrong or doubtful in the input, and what is done about it.
 *
 * @param code stable code
 * @param level how bad it is
 * @param treatment what happens to the feature
 * @param role layer role the feature was read for
 * @param where the feature or layer
 * @param problem what is wrong, in words
 * @param action what was done or what the user should do, in words
 */
public record Finding(
    FindingCode code,
    Level level,
    Treatment treatment,
    LayerRole role,
    FeatureRef where,
    String problem,
    String action) {

  private static final int LONGEST_PART = 500;

  /** How bad a finding is. */
  public enum Level {
    /** The assessment cannot run. */
    ERROR,
    /** The assessment runs; the result is affected. */
    WARNING,
    /** Worth knowing. */
    NOTE
  }

  /** What happens to the feature a finding is about. */
  public enum Treatment {
    /** Used as it is. */
    KEPT,
    /** Used after a stated repair. */
    REPAIRED,
    /** Left out. */
    SKIPPED,
    /** The whole run stops. */
    REFUSED
  }

  /** Order for lists: role, file, layer, id, code; stable whatever order the input had. */
  public static final Comparator<Finding> ORDER =
      Comparator.comparing(Finding::role)
          .thenComparing(f -> f.where().file())
          .thenComparing(f -> f.where().layer())
          .thenComparing(f -> f.where().featureId(), Ids.ORDER)
          .thenComparing(Finding::code)
          .thenComparing(Finding::problem);

  /**
   * Refuses a finding of which a part is missing.
   *
   * @param code stable code
   * @param level how bad it is
   * @param treatment what happens to the feature
   * @param role layer role the feature was read for
   * @param where the feature or layer
   * @param problem what is wrong, in words
   * @param action what was done or what the user should do, in words
   * @throws NullPointerException if anything is null
   */
  public Finding {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(level, "level");
    Objects.requireNonNull(treatment, "treatment");
    Objects.requireNonNull(role, "role");
    Objects.requireNonNull(where, "where");
    Objects.requireNonNull(problem, "problem");
    Objects.requireNonNull(action, "action");
  }

  /**
   * {@return {@code file: layer: feature id: what is wrong; what is done}, in one line without
   * control characters, and each part of it cut where it is very long}
   */
  public String message() {
    return where
        + ": "
        + PlainText.line(problem, LONGEST_PART)
        + "; "
        + PlainText.line(action, LONGEST_PART);
  }
}
