package org.meadowmark.core.measure;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/** Typed queries: the tree itself returns raw lists. */
final class StrTreeQuery {
  private StrTreeQuery() {}

  @SuppressWarnings("unchecked")
  static <T> List<T> items(STRtree tree, Envelope envelope) {
    return tree.isEmpty() ? List.of() : (List<T>) tree.query(envelope);
  }
}
