package org.meadowmark.core.write;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class ForemostTest {
  /** The stream of the language is the reference. */
  @Property(tries = 200)
  void itIsTheBeginningOfTheSortedRows(
      @ForAll List<Integer> rows, @ForAll @IntRange(max = 20) int most) {
    List<Integer> distinct = rows.stream().distinct().toList();
    assertThat(Foremost.of(distinct, Comparator.reverseOrder(), most))
        .isEqualTo(distinct.stream().sorted(Comparator.reverseOrder()).limit(most).toList());
  }
}
