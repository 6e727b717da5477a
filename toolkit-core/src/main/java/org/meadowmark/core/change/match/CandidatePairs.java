package org.meadowmark.core.change.match;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.hprtree.HPRtree;
import org.meadowmark.core.model.Progress;

/**
 * Scars of two surveys that may be the same, found with an index of boxes.
 *
 * <p>Where very many scars lie over one another, the {@value #MOST_READ} nearest by their middles
 * are read, nearest first, and no more once they cover the scar {@value #MOST_COVER} times over;
 * the scar is then marked as crowded. Scars of equal place are read from the same rank on, so that
 * a pile of equal scars matches a pile of equal scars one by one.
 *
 * <p>Time is that of n queries plus the pairs that lie near each other.
 */
final class CandidatePairs {
  private static final int MOST_COVER = 6;

  /** Where no more boxes meet, all are read, in any order. */
  private static final int FEW = 64;

  private static final int MOST_READ = 512;

  private static final int BLOCK = 256;

  private final List<ComparedTrace> earlier;
  private final List<ComparedTrace> later;
  private final double toleranceMetres;
  private final double directionDegrees;
  private final HPRtree tree = new HPRtree();
  private final double[] laterX;
  private final double[] laterY;
  private final boolean[] crowded;

  /**
   * Pairs found.
   *
   * @param pairs by earlier and then later scar
   * @param earlierCrowded whether candidates of an earlier scar were left out
   * @param laterCrowded whether a later scar is covered as many times over
   */
  record Found(List<Pair> pairs, boolean[] earlierCrowded, boolean[] laterCrowded) {}

  CandidatePairs(
      List<ComparedTrace> earlier,
      List<ComparedTrace> later,
      double toleranceMetres,
      double directionDegrees) {
    this.earlier = earlier;
    this.later = later;
    this.toleranceMetres = toleranceMetres;
    this.directionDegrees = directionDegrees;
    this.crowded = new boolean[earlier.size()];
    this.laterX = new double[later.size()];
    this.laterY = new double[later.size()];
    for (int i = 0; i < later.size(); i++) {
      if (later.get(i).gridMetres() > 0) {
        Coordinate middle = later.get(i).trace().box().centre();
        laterX[i] = middle.x;
        laterY[i] = middle.y;
        tree.insert(later.get(i).trace().box(), i);
      }
    }
    tree.build();
  }

  Found find(Progress progress) {
    int blocks = (earlier.size() + BLOCK - 1) / BLOCK;
    List<Pair> pairs =
        IntStream.range(0, blocks)
            .parallel()
            .mapToObj(
                block -> {
                  int end = Math.min(earlier.size(), (block + 1) * BLOCK);
                  PairReader reader = new PairReader(toleranceMetres, directionDegrees);
                  List<Pair> found =
                      IntStream.range(block * BLOCK, end)
                          .boxed()
                          .flatMap(i -> of(i, reader).stream())
                          .toList();
                  progress.advance(end - block * BLOCK);
                  return found;
                })
            .flatMap(List::stream)
            .toList();
    double[] cover = new double[later.size()];
    pairs.forEach(pair -> cover[pair.later()] += pair.laterMetres());
    boolean[] laterCrowded = new boolean[later.size()];
    for (int i = 0; i < laterCrowded.length; i++) {
      laterCrowded[i] = cover[i] > 0 && cover[i] >= MOST_COVER * later.get(i).comparableMetres();
    }
    return new Found(pairs, crowded, laterCrowded);
  }

  private List<Pair> of(int index, PairReader reader) {
    ComparedTrace scar = earlier.get(index);
    if (scar.gridMetres() == 0) {
      return List.of();
    }
    Envelope box = new Envelope(scar.trace().box());
    box.expandBy(toleranceMetres * scar.trace().lengthFactor());
    int[] near = near(box, index);
    List<Pair> found = new ArrayList<>(4);
    double cover = 0;
    for (int candidate : near) {
      if (near.length > FEW && cover >= MOST_COVER * scar.comparableMetres()) {
        crowded[index] = true;
        break;
      }
      var pair = reader.read(index, scar, candidate, later.get(candidate));
      if (pair.isPresent()) {
        cover += pair.get().earlierMetres();
        found.add(pair.get());
      }
    }
    found.sort(Comparator.comparingInt(Pair::later));
    return found;
  }

  private int[] near(Envelope box, int index) {
    IntStream.Builder items = IntStream.builder();
    tree.query(box, item -> items.add((Integer) item));
    int[] near = items.build().toArray();
    if (near.length <= FEW) {
      return near;
    }
    Coordinate middle = earlier.get(index).trace().box().centre();
    PriorityQueue<Candidate> nearest = new PriorityQueue<>(MOST_READ + 1, Candidate.FARTHEST_FIRST);
    for (int i : near) {
      double x = laterX[i] - middle.x;
      double y = laterY[i] - middle.y;
      double squared = x * x + y * y;
      if (nearest.size() < MOST_READ || squared <= nearest.peek().squared) {
        nearest.add(new Candidate(i, squared, Math.floorMod(i - index, later.size())));
        if (nearest.size() > MOST_READ) {
          nearest.poll();
        }
      }
    }
    crowded[index] |= near.length > MOST_READ;
    return nearest.stream()
        .sorted(Candidate.FARTHEST_FIRST.reversed())
        .mapToInt(Candidate::index)
        .toArray();
  }

  /**
   * A scar whose box meets that of another.
   *
   * @param squared square distance between the middles
   * @param steps places after the other scar's own, in the order of ids, going round
   */
  private record Candidate(int index, double squared, int steps) {
    static final Comparator<Candidate> FARTHEST_FIRST =
        Comparator.comparingDouble(Candidate::squared)
            .thenComparingInt(Candidate::steps)
            .reversed();
  }
}
