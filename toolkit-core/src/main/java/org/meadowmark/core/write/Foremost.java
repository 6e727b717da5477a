package org.meadowmark.core.write;

import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.function.Function;
import org.meadowmark.core.store.RowStore;

/** The first few of very many rows, without holding the others: a survey can have millions. */
public final class Foremost {
  private Foremost() {}

  private record Kept<K>(K key, int place) {}

  /**
   * {@return the first rows in an order}
   *
   * @param rows all rows
   * @param order an order in which no two rows are equal
   * @param most how many at most
   * @param <T> kind of row
   */
  public static <T> List<T> of(List<T> rows, Comparator<? super T> order, int most) {
    return of(rows, Function.identity(), order, most);
  }

  /**
   * {@return the first rows in the order of something that takes less room than they do}
   *
   * <p>Time n log m for m of n rows; memory for m keys. Rows that are kept elsewhere are read when
   * the list returned is asked for them, so none is held.
   *
   * @param rows all rows
   * @param key what rows are ordered by
   * @param order an order in which no two keys are equal
   * @param most how many at most
   * @param <T> kind of row
   * @param <K> kind of key
   */
  public static <T, K> List<T> of(
      List<T> rows, Function<? super T, K> key, Comparator<? super K> order, int most) {
    Comparator<Kept<K>> first = (a, b) -> order.compare(a.key, b.key);
    PriorityQueue<Kept<K>> kept = new PriorityQueue<>(first.reversed());
    int place = 0;
    for (T row : rows) {
      K each = key.apply(row);
      if (kept.size() < most) {
        kept.add(new Kept<>(each, place));
      } else if (most > 0 && order.compare(each, kept.peek().key) < 0) {
        kept.poll();
        kept.add(new Kept<>(each, place));
      }
      place++;
    }
    return RowStore.picked(rows, kept.stream().sorted(first).mapToInt(Kept::place).toArray());
  }
}
