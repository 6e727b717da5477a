package org.meadowmark.core.write;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.meadowmark.core.model.KeptElsewhere;
import org.meadowmark.core.store.DiskRows;
import org.meadowmark.core.store.RowStore;

class ForemostTest {
  /** The stream of the language is the reference. */
  @Property(tries = 200)
  void itIsTheBeginningOfTheSortedRows(
      @ForAll List<Integer> rows, @ForAll @IntRange(max = 20) int most) {
    List<Integer> distinct = rows.stream().distinct().toList();
    assertThat(Foremost.of(distinct, Comparator.reverseOrder(), most))
        .isEqualTo(distinct.stream().sorted(Comparator.reverseOrder()).limit(most).toList());
  }

  private record Row(String name) {}

  /** Rows on disk are read again for whoever asks, and none is kept. */
  @Property(tries = 50)
  void rowsOnDiskAreChosenByTheirKey(
      @ForAll List<Integer> numbers, @ForAll @IntRange(max = 5) int most) throws IOException {
    List<Row> distinct = numbers.stream().distinct().map(n -> new Row("row " + n)).toList();
    Path folder = Files.createTempDirectory("foremost");
    try (DiskRows store = DiskRows.in(folder)) {
      RowStore.Rows<Row> rows = store.rows(Row.class);
      distinct.forEach(rows::add);
      List<Row> first = Foremost.of(rows.list(), Row::name, Comparator.naturalOrder(), most);
      assertThat(first)
          .isInstanceOf(KeptElsewhere.class)
          .isEqualTo(
              distinct.stream().sorted(Comparator.comparing(Row::name)).limit(most).toList());
      if (!first.isEmpty()) {
        assertThat(first.get(0)).isNotSameAs(first.get(0));
      }
    } finally {
      Files.delete(folder);
    }
  }
}
