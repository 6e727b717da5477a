package org.meadowmark.core.store;

import java.util.AbstractList;
import java.util.ArrayList;
import java.util.List;
import java.util.RandomAccess;

/** Where rows are kept while more of them come. */
public interface RowStore extends AutoCloseable {
  /**
   * An empty list that grows.
   *
   * @param type kind of row
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
    /** Adds a row at the end; true. Not safe for several threads. */
    boolean add(T row);

    /** The rows so far; each is read when it is asked for. Safe for several threads. */
    List<T> list();
  }

  /** Keeps everything in memory. */
  static RowStore inMemory() {
    return new RowStore() {
      @Override
      public <T extends Record> Rows<T> rows(Class<T> type) {
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

      @Override
      public void close() {
        // Nothing is open.
      }
    };
  }

  /** Some of the rows of a list, in an order; each is read when it is asked for. */
  static <T> List<T> picked(List<T> rows, int[] places) {
    return new Picked<>(rows, places);
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
