package org.meadowmark.core.change.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.meadowmark.core.change.match.MatchingStudy.Outcome;
import org.meadowmark.core.survey.MatchingParameters;
import org.meadowmark.core.survey.ParametersTable;

/** A small run of the study in {@code docs/scar-matching.md}. */
class MatchingStudyTest {
  private static final long FIRST_SEED = 1_001;
  private static final double[] ERRORS = {0.1, 0.3, 1, 3};
  private static final MatchingParameters DEFAULTS =
      ParametersTable.bundled().defaults().matching();

  private static final MatchingStudy.Case GOOD = new MatchingStudy.Case(1_000, 0.3);
  private static final MatchingStudy.Case POOR = new MatchingStudy.Case(1_000, 3);

  private static Map<MatchingStudy.Case, Outcome> outcomes;

  @BeforeAll
  static void match() {
    outcomes = MatchingStudy.run(FIRST_SEED, 2, List.of(GOOD, POOR), DEFAULTS);
  }

  @Test
  void goodPositionsMatchNearlyAll() {
    Outcome outcome = outcomes.get(GOOD);
    assertThat(outcome.truePairs()).isGreaterThan(1_000);
    assertThat(outcome.recall()).isGreaterThan(0.98);
    assertThat(outcome.precision()).isGreaterThan(0.96);
    assertThat(outcome.right()).isGreaterThan(0.95);
    assertThat(outcome.newShare()).isBetween(0.95, 1.08);
    assertThat(outcome.healedShare()).isBetween(0.95, 1.08);
  }

  @Test
  void poorPositionsStillMatchMost() {
    Outcome outcome = outcomes.get(POOR);
    assertThat(outcome.recall()).isGreaterThan(0.85);
    assertThat(outcome.precision()).isGreaterThan(0.75);
    assertThat(outcome.newShare()).isBetween(0.85, 1.1);
  }

  /** Writes the tables of the document: takes minutes. */
  @Test
  @EnabledIfSystemProperty(named = "meadowmark.matching-seeds", matches = "[1-9][0-9]*")
  void writesTheTables() throws Exception {
    int seeds = Integer.getInteger("meadowmark.matching-seeds");
    List<String> rows = MatchingStudy.tables(FIRST_SEED, seeds, ERRORS);
    Files.write(Path.of("target", "scar-matching.md"), rows);
    assertThat(rows).hasSizeGreaterThan(2 * ERRORS.length);
  }
}
