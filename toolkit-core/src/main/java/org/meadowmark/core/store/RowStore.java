package org.meadowmark.core.store;

import java.util.AbstractList;
import java.util.ArrayList;
import java.util.List;
import java.util.RandomAccess;
import java.util.stream.IntStream;
import org.meadowmark.core.model.KeptElsewhere;

/** Where rows are kept while more of them come. */
public interface RowStore extends AutoCloseable {
  /**
   * An empty list that grows.
   *
   * @param <T> kind of row
   * @param type kind of row
   * @return the list, which lives as long as the store is open
   */
  <T extends Record> Rows<T> rows(Class<T> type);

  @Override
  void close();

  /**
   * Rows in the order in which they were added.
   *
   * @param <T> kind of row
   */
  interface Rows<T> {
    /**
     * Adds a row at the end; true. Not safe for several threads.
     *
     * @param row the row
     * @return {@code true}
     */
    boolean add(T row);

    /** {@return the rows so far; each is read when it is asked for. Safe for several threads} */
    List<T> list();
  }

  /**
   * {@return an empty list in memory}
   *
   * @param <T> kind of row
   */
  static <T> Rows<T> held() {
    List<T> held = new ArrayList<>();
    return new Rows<>() {
      @Override
      public boolean add(T row) {
        return held.add(row);
      }

      @Override
      public List<T> list() {
        return held;
      }
    };
  }

  /** {@return a store that keeps everything in memory; closing it does nothing} */
  static RowStore inMemory() {
    return new RowStore() {
      @Override
      public <T extends Record> Rows<T> rows(Class<T> type) {
        return held();
      }

      @Override
      public void close() {
        // Nothing is open.
      }
    };
  }

  /**
   * {@return some of the rows of a list, in an order; those kept elsewhere are read when asked for}
   *
   * @param <T> kind of row
   * @param rows the list
   * @param places positions in the list, from 0, in the order wanted
   */
  static <T> List<T> picked(List<T> rows, int[] places) {
    return rows instanceof KeptElsewhere
        ? new Picked<>(rows, places)
        : IntStream.of(places).<T>mapToObj(rows::get).toList();
  }

  /** A view that copies nothing. */
  final class Picked<T> extends AbstractList<T> implements RandomAccess, KeptElsewhere {
    private final List<T> rows;
    private final int[] places;

    Picked(List<T> rows, int[] places) {
      this.rows = rows;
      this.places = places;
    }

    @Override
    public T get(int i) {
      return rows.get(places[i]);
    }

    @Override
    public int size() {
      return places.length;
    }
  }
}
