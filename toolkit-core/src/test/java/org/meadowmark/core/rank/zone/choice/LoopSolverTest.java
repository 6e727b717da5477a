package org.meadowmark.core.rank.zone.choice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.Arrays;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.rank.zone.choice.ZoneChoice.Proof;

class LoopSolverTest {
  private static final Consumer<double[]> NO_HELP = solution -> {};

  @BeforeEach
  void solverRunsHere() {
    assumeTrue(LoopSolver.isAvailable(), "no native library for this machine");
  }

  /** From the plain choice, so that the search has to find the best itself. */
  @Test
  void programmeAloneFindsTheBestOfAllSubsetsOn500RandomNetworks() {
    int improved = 0;
    for (long seed = 0; seed < 500; seed++) {
      ZoneProblem problem = RandomNetworks.small(seed);
      Core core = Core.of(problem);
      Incumbent incumbent = incumbent(problem, core);
      double plain = incumbent.covered();
      if (plain == 0) {
        continue;
      }
      double bound = LinearSearch.run(new ZoneRows(core, problem), incumbent, NO_HELP);
      double best = ZoneChooserTest.bestOfAllSubsets(problem);
      assertThat(incumbent.covered()).as("seed %d", seed).isCloseTo(best, within(1e-8 * best));
      assertThat(bound).as("seed %d", seed).isBetween(best * (1 - 1e-12), best * (1 + 2e-9));
      improved += incumbent.covered() > plain ? 1 : 0;
    }
    assertThat(improved).isGreaterThan(50);
  }

  /** With its help the same; and nothing is offered that is not allowed. */
  @Test
  void wholeSolverFindsTheBestOfAllSubsets() {
    for (long seed = 7000; seed < 7200; seed++) {
      ZoneProblem problem = RandomNetworks.small(seed);
      Core core = Core.of(problem);
      Incumbent incumbent = incumbent(problem, core);
      if (incumbent.covered() > 0) {
        double bound = LoopSolver.run(core, problem, incumbent);
        double best = ZoneChooserTest.bestOfAllSubsets(problem);
        assertThat(incumbent.covered()).as("seed %d", seed).isCloseTo(best, within(1e-8 * best));
        assertThat(bound).as("seed %d", seed).isBetween(best * (1 - 1e-12), best * (1 + 2e-9));
        ZoneChooserTest.checkAllowed(problem, incumbent.choice(bound, Proof.INTEGER_PROGRAMME));
      }
    }
  }

  @Test
  void sameInputGivesTheSameChoice() {
    for (long seed = 9000; seed < 9040; seed++) {
      assertThat(solved(seed)).as("seed %d", seed).isEqualTo(solved(seed));
    }
  }

  private static String solved(long seed) {
    ZoneProblem problem = RandomNetworks.small(seed);
    Core core = Core.of(problem);
    Incumbent incumbent = incumbent(problem, core);
    double bound = LoopSolver.run(core, problem, incumbent);
    ZoneChoice choice = incumbent.choice(bound, Proof.INTEGER_PROGRAMME);
    return bound + " " + choice.zones().stream().map(Arrays::toString).toList();
  }

  private static Incumbent incumbent(ZoneProblem problem, Core core) {
    Incumbent incumbent = new Incumbent(problem, core);
    boolean[] plain = new boolean[core.size()];
    Arrays.stream(WorstFirst.choose(problem)).forEach(i -> plain[i] = true);
    incumbent.offer(core, plain);
    return incumbent;
  }
}
