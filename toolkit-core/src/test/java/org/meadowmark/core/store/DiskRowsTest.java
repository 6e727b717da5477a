package org.meadowmark.core.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DiskRowsTest {
  @TempDir private Path folder;

  private record Row(int number, String text) {
    static Row of(int number) {
      return new Row(number, "row " + "x".repeat(number % 50));
    }
  }

  private static List<Row> some(int count) {
    return IntStream.range(0, count).mapToObj(Row::of).toList();
  }

  @Test
  void rowsComeBackInTheirOrderAndInAnyOther() {
    try (DiskRows store = DiskRows.in(folder)) {
      RowStore.Rows<Row> rows = store.rows(Row.class);
      some(5_000).forEach(rows::add);
      assertThat(rows.list()).isEqualTo(some(5_000));
      assertThat(RowStore.picked(rows.list(), new int[] {4_999, 0, 17}))
          .containsExactly(Row.of(4_999), Row.of(0), Row.of(17));
      assertThatThrownBy(() -> rows.list().get(5_000))
          .isInstanceOf(IndexOutOfBoundsException.class);
    }
  }

  @Test
  void rowsCanBeReadWhileMoreCome() {
    try (DiskRows store = DiskRows.in(folder)) {
      RowStore.Rows<Row> rows = store.rows(Row.class);
      RowStore.Rows<Row> others = store.rows(Row.class);
      for (int i = 0; i < 300; i++) {
        rows.add(Row.of(i));
        others.add(Row.of(2 * i));
        assertThat(rows.list().get(i)).isEqualTo(Row.of(i));
        assertThat(others.list().get(i / 2)).isEqualTo(Row.of(i / 2 * 2));
      }
    }
  }

  @Test
  void severalThreadsMayRead() {
    try (DiskRows store = DiskRows.in(folder)) {
      RowStore.Rows<Row> rows = store.rows(Row.class);
      some(20_000).forEach(rows::add);
      assertThat(IntStream.range(0, 20_000).parallel().mapToObj(rows.list()::get).toList())
          .isEqualTo(some(20_000));
    }
  }

  @Test
  void closingLeavesNothing() throws IOException {
    try (DiskRows store = DiskRows.in(folder)) {
      store.rows(Row.class).add(Row.of(1));
      store.rows(Row.class);
    }
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left).isEmpty();
    }
  }

  @Test
  void aFileThatSomebodyCutsOffIsNoEndOfRows() throws IOException {
    try (DiskRows store = DiskRows.in(folder)) {
      RowStore.Rows<Row> rows = store.rows(Row.class);
      some(100).forEach(rows::add);
      assertThat(rows.list().get(99)).isEqualTo(Row.of(99));
      try (Stream<Path> files = Files.walk(folder)) {
        Files.write(files.filter(Files::isRegularFile).findFirst().orElseThrow(), new byte[20]);
      }
      assertThatThrownBy(() -> rows.list().get(99))
          .isInstanceOf(UncheckedIOException.class)
          .hasMessageContaining("cut off");
    }
  }
}
