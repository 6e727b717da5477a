package org.meadowmark.core.measure.connectivity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Gaps that are filled together, such as those of one scar.
 *
 * @param joins patches that become one; joins that share a patch are taken as one join
 */
public record Filling(List<Join> joins) {
  /**
   * Keeps a copy of the list that cannot be changed.
   *
   * @param joins patches that become one; joins that share a patch are taken as one join
   * @throws NullPointerException if the list or an entry of it is null
   */
  public Filling {
    joins = List.copyOf(joins);
  }

  /**
   * {@return one gap between two patches, without the area of the gap itself}
   *
   * @param first number of a patch
   * @param second number of the patch on the other side
   */
  public static Filling ofGap(int first, int second) {
    return new Filling(List.of(Join.of(0, first, second)));
  }

  /**
   * Patches that become one patch.
   *
   * @param nodes the patches; one alone only gains the area
   * @param addedHectares area of the filled gap, which joins them
   */
  public record Join(List<Integer> nodes, double addedHectares) {
    /**
     * Keeps a copy of the list that cannot be changed, and refuses what joins nothing.
     *
     * @param nodes the patches; one alone only gains the area
     * @param addedHectares area of the filled gap, which joins them
     * @throws IllegalArgumentException if there is no patch, or the area is negative or not finite
     */
    public Join {
      nodes = List.copyOf(nodes);
      if (nodes.isEmpty()) {
        throw new IllegalArgumentException("a join needs at least one patch");
      }
      if (!(addedHectares >= 0) || Double.isInfinite(addedHectares)) {
        throw new IllegalArgumentException("added area is " + addedHectares + " ha");
      }
    }

    /**
     * {@return a join of these patches}
     *
     * @param addedHectares area of the filled gap, 0 or more
     * @param nodes numbers of the patches, one or more
     * @throws IllegalArgumentException if there is no patch, or the area is negative or not finite
     */
    public static Join of(double addedHectares, int... nodes) {
      return new Join(Arrays.stream(nodes).boxed().toList(), addedHectares);
    }
  }

  int[] nodes() {
    return joins.stream()
        .flatMap(join -> join.nodes.stream())
        .mapToInt(Integer::intValue)
        .distinct()
        .toArray();
  }

  /** Joins that share no patch, in order of their first. */
  List<Join> separateJoins() {
    List<Join> separate = new ArrayList<>();
    for (Join join : joins) {
      List<Integer> nodes = new ArrayList<>(join.nodes);
      double added = join.addedHectares;
      int place = separate.size();
      for (int i = separate.size() - 1; i >= 0; i--) {
        Join other = separate.get(i);
        if (other.nodes.stream().anyMatch(nodes::contains)) {
          other.nodes.stream().filter(node -> !nodes.contains(node)).forEach(nodes::add);
          added += other.addedHectares;
          separate.remove(i);
          place = i;
        }
      }
      separate.add(place, new Join(nodes.stream().distinct().toList(), added));
    }
    return separate;
  }
}
