package org.meadowmark.core.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;

class FindingLogTest {
  private static Finding finding(int feature, FindingCode code) {
    return new Finding(
        code,
        Finding.Level.NOTE,
        Finding.Treatment.KEPT,
        LayerRole.SCARS,
        new FeatureRef("f", "l", Integer.toString(feature)),
        // A text of its own, as the checks make them.
        new StringBuilder("pro").append("blem").toString(),
        "action");
  }

  @Test
  void orderDoesNotDependOnArrivalOrThreads() {
    List<Finding> findings = new ArrayList<>();
    IntStream.range(0, 2000)
        .forEach(
            i -> {
              findings.add(finding(i, FindingCode.WIDTH_MISSING));
              findings.add(finding(i, FindingCode.CAUSE_UNKNOWN));
            });
    FindingLog straight = new FindingLog();
    straight.addAll(findings);
    Collections.shuffle(findings, new Random(1));
    FindingLog shuffled = new FindingLog();
    findings.parallelStream().forEach(shuffled::add);
    assertThat(shuffled.sorted()).isEqualTo(straight.sorted()).hasSize(4000);
    assertThat(shuffled.counts()).isEqualTo(straight.counts());
    assertThat(straight.counts()).extracting(FindingLog.Count::count).containsExactly(2000L, 2000L);
    assertThat(straight.sorted().get(0).where().featureId()).isEqualTo("0");
    assertThat(straight.sorted().get(20).where().featureId()).isEqualTo("10");
  }

  @Test
  void repeatedTextsAreStoredOnce() {
    FindingLog log = new FindingLog();
    log.add(finding(1, FindingCode.WIDTH_MISSING));
    log.add(finding(2, FindingCode.WIDTH_MISSING));
    assertThat(log.sorted().get(0).problem()).isSameAs(log.sorted().get(1).problem());
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "0.4, 0.4",
    "0.123456, 0.1235",
    "123456.7, 123457",
    "0.0000012345, 0.000001234",
    "20, 20",
    "-3.50, -3.5",
    "NaN, NaN"
  })
  void numbersArePlain(double value, String text) {
    assertThat(Figures.plain(value)).isEqualTo(text);
  }
}
