package org.meadowmark.core.partition;

import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.hprtree.HPRtree;
import org.meadowmark.core.measure.InteractionReach;
import org.meadowmark.core.model.Scar;

/** Boxes around footprints of scars, and how far each reaches. */
final class ScarBoxes {
  private static final int SIDES = 4;

  private final double[] sides;
  private final double[] reach;
  private final double[] toBeds;
  private final double longest;
  private final double longestToBeds;
  private final HPRtree index = new HPRtree();

  private ScarBoxes(double[] sides, double[] reach, double[] toBeds) {
    this.sides = sides;
    this.reach = reach;
    this.toBeds = toBeds;
    double far = 0;
    double farToBeds = 0;
    for (int i = 0; i < reach.length; i++) {
      index.insert(box(i), i);
      far = Math.max(far, reach[i]);
      farToBeds = Math.max(farToBeds, toBeds[i]);
    }
    index.build();
    longest = far;
    longestToBeds = farToBeds;
  }

  static ScarBoxes of(List<Scar> scars, InteractionReach reach) {
    double[] sides = new double[SIDES * scars.size()];
    double[] ofScars = new double[scars.size()];
    double[] toBeds = new double[scars.size()];
    IntStream.range(0, scars.size())
        .parallel()
        .forEach(
            i -> {
              Scar scar = scars.get(i);
              Envelope box = reach.extent(scar);
              sides[SIDES * i] = box.getMinX();
              sides[SIDES * i + 1] = box.getMaxX();
              sides[SIDES * i + 2] = box.getMinY();
              sides[SIDES * i + 3] = box.getMaxY();
              ofScars[i] = reach.ofScar(scar);
              toBeds[i] = reach.toBeds(scar);
            });
    return new ScarBoxes(sides, ofScars, toBeds);
  }

  int count() {
    return reach.length;
  }

  double reach(int scar) {
    return reach[scar];
  }

  double toBeds(int scar) {
    return toBeds[scar];
  }

  private Envelope box(int i) {
    return new Envelope(
        sides[SIDES * i], sides[SIDES * i + 1], sides[SIDES * i + 2], sides[SIDES * i + 3]);
  }

  /** Scars whose box is within their reach of the box of a bed. */
  int[] nearBed(Envelope bed) {
    return query(bed, longestToBeds, i -> box(i).distance(bed) <= toBeds[i]);
  }

  /** Scars whose box is within the reach of both of that of another. */
  int[] nearScar(int scar) {
    Envelope own = box(scar);
    return query(own, reach[scar] + longest, i -> box(i).distance(own) <= reach[scar] + reach[i]);
  }

  /** Number of scars whose box meets another. */
  int countMeeting(Envelope other) {
    return query(other, 0, i -> box(i).intersects(other)).length;
  }

  private int[] query(Envelope around, double distance, IntPredicate wanted) {
    Envelope window = new Envelope(around);
    window.expandBy(distance);
    IntStream.Builder found = IntStream.builder();
    index.query(
        window,
        item -> {
          if (wanted.test((Integer) item)) {
            found.add((Integer) item);
          }
        });
    return found.build().sorted().toArray();
  }
}
