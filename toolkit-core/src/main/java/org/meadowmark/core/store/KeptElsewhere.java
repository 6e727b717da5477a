package org.meadowmark.core.store;

import java.util.List;

/** Marks a list that cannot be changed and whose rows are read when they are asked for. */
public interface KeptElsewhere {
  /** A list that cannot be changed: the list itself where its rows are kept elsewhere. */
  static <T> List<T> copyOf(List<T> list) {
    return list instanceof KeptElsewhere ? list : List.copyOf(list);
  }
}
