package org.meadowmark.core.measure;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/** Typed queries: the tree itself returns raw lists. */
public final class StrTreeQuery {
  private StrTreeQuery() {}

  @SuppressWarnings("unchecked")
  /**
   * Items whose envelope meets an envelope.
   *
   * @param tree a built tree that holds items of one type
   * @param envelope where to look
   * @param <T> type of the items
   */
  public static <T> List<T> items(STRtree tree, Envelope envelope) {
    return tree.isEmpty() ? List.of() : (List<T>) tree.query(envelope);
  }
}
