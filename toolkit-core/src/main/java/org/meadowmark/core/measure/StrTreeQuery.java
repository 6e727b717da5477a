package org.meadowmark.core.measure;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.index.strtree.STRtree;

/** Trees of envelopes with typed queries: the tree itself returns raw lists. */
public final class StrTreeQuery {
  private StrTreeQuery() {}

  /** A tree of the positions of geometries in a list; empty geometries are left out. */
  static STRtree positions(List<? extends Geometry> geometries) {
    STRtree tree = new STRtree();
    for (int i = 0; i < geometries.size(); i++) {
      tree.insert(geometries.get(i).getEnvelopeInternal(), i);
    }
    tree.build();
    return tree;
  }

  /** A tree of the positions of footprints in a list. */
  static STRtree footprints(List<Footprint> footprints) {
    STRtree tree = new STRtree();
    for (int i = 0; i < footprints.size(); i++) {
      tree.insert(footprints.get(i).extent(), i);
    }
    tree.build();
    return tree;
  }

  /**
   * {@return items whose envelope meets an envelope}
   *
   * @param tree a built tree that holds items of one type
   * @param envelope where to look
   * @param <T> type of the items
   */
  @SuppressWarnings("unchecked")
  public static <T> List<T> items(STRtree tree, Envelope envelope) {
    return tree.isEmpty() ? List.of() : (List<T>) tree.query(envelope);
  }
}
