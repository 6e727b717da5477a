package org.meadowmark.cluster.bay;

import java.util.HashMap;
import java.util.List;
import org.apache.spark.Partitioner;
import scala.Tuple2;

/** One task for each part, the largest first, so that none of them is left for the end. */
final class PartPlaces extends Partitioner {
  private static final long serialVersionUID = 1L;

  private final HashMap<Tuple2<String, Integer>, Integer> places = new HashMap<>();

  /** Parts, the largest first. */
  PartPlaces(List<Tuple2<String, Integer>> parts) {
    parts.forEach(part -> places.put(part, places.size()));
  }

  @Override
  public int numPartitions() {
    return Math.max(1, places.size());
  }

  @Override
  public int getPartition(Object part) {
    return places.get(part);
  }
}
