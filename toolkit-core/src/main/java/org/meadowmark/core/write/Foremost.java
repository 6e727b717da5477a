package org.meadowmark.core.write;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/** The first few of very many rows, without holding the others: a survey can have millions. */
public final class Foremost {
  private Foremost() {}

  /**
   * {@return the first rows in an order}
   *
   * <p>Time n log m for m of n rows; memory for m.
   *
   * @param rows all rows; each is asked for once
   * @param order an order in which no two rows are equal
   * @param most how many at most
   * @param <T> kind of row
   */
  public static <T> List<T> of(Collection<T> rows, Comparator<? super T> order, int most) {
    PriorityQueue<T> kept = new PriorityQueue<>(order.reversed());
    for (T row : rows) {
      if (kept.size() < most) {
        kept.add(row);
      } else if (most > 0 && order.compare(row, kept.peek()) < 0) {
        kept.poll();
        kept.add(row);
      }
    }
    return kept.stream().sorted(order).toList();
  }
}
