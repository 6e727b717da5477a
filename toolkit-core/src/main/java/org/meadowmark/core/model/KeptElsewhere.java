package org.meadowmark.core.model;

import java.util.List;

/** Marks a list that cannot be changed and whose rows are read when they are asked for. */
public interface KeptElsewhere {
  /**
   * {@return a list that cannot be changed: the list itself where its rows are kept elsewhere, else
   * a copy}
   *
   * @param <T> kind of row
   * @param list any list without nulls
   */
  static <T> List<T> copyOf(List<T> list) {
    return list instanceof KeptElsewhere ? list : List.copyOf(list);
  }
}
