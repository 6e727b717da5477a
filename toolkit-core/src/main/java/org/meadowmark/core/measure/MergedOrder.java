package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import org.meadowmark.core.model.Ids;

/** Puts what parts have in the order of the whole survey. */
final class MergedOrder {
  private MergedOrder() {}

  private record Place(int part, int local, String id) {}

  /**
   * Order of things with ids.
   *
   * @param parts part of each
   * @param locals its place in the part
   * @param rows its row among those of all parts
   */
  record Places(int[] parts, int[] locals, int[] rows) {
    /** Rows that belong to the things, in their order. */
    int[] ranges(
        List<MergedPart> all, Function<MergedPart, int[]> ends, ToIntFunction<MergedPart> start) {
      return IntStream.range(0, parts.length)
          .flatMap(
              i -> {
                MergedPart part = all.get(parts[i]);
                int[] endsOfPart = ends.apply(part);
                int local = locals[i];
                int from = local == 0 ? 0 : endsOfPart[local - 1];
                int first = start.applyAsInt(part);
                return IntStream.range(first + from, first + endsOfPart[local]);
              })
          .toArray();
    }
  }

  private static List<Place> sorted(List<MergedPart> parts, Function<MergedPart, String[]> ids) {
    List<Place> places = new ArrayList<>();
    for (int p = 0; p < parts.size(); p++) {
      String[] ofPart = ids.apply(parts.get(p));
      for (int i = 0; i < ofPart.length; i++) {
        places.add(new Place(p, i, ofPart[i]));
      }
    }
    places.sort(Comparator.comparing(Place::id, Ids.ORDER));
    return places;
  }

  static Places byId(
      List<MergedPart> parts,
      Function<MergedPart, String[]> ids,
      ToIntFunction<MergedPart> start) {
    List<Place> places = sorted(parts, ids);
    return new Places(
        places.stream().mapToInt(Place::part).toArray(),
        places.stream().mapToInt(Place::local).toArray(),
        places.stream()
            .mapToInt(place -> start.applyAsInt(parts.get(place.part)) + place.local)
            .toArray());
  }

  /** Place in the whole of each thing, by part. */
  static int[][] ranksById(List<MergedPart> parts, Function<MergedPart, String[]> ids) {
    int[][] ranks =
        parts.stream().map(part -> new int[ids.apply(part).length]).toArray(int[][]::new);
    List<Place> places = sorted(parts, ids);
    for (int i = 0; i < places.size(); i++) {
      ranks[places.get(i).part][places.get(i).local] = i;
    }
    return ranks;
  }
}
