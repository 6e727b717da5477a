package org.meadowmark.core.change.effect;

import java.util.List;

/**
 * Which segments are compared over which seasons.
 *
 * <p>Markers placed on days that part the seasons alike make a group; a control's figures are those
 * of each group's seasons, and count by the group's exposure.
 *
 * @param amounts by segment, then by group: what was seen in the group's seasons
 * @param labels group of each segment, or {@link #CONTROL}
 */
record Design(List<List<Amounts>> amounts, int[] labels) {
  static final int CONTROL = -1;

  int segments() {
    return labels.length;
  }

  int groups() {
    return amounts.get(0).size();
  }

  int marked() {
    int marked = 0;
    for (int label : labels) {
      marked += label == CONTROL ? 0 : 1;
    }
    return marked;
  }

  int controls() {
    return segments() - marked();
  }

  private Amounts sum(int label, int group) {
    Amounts sum = Amounts.NONE;
    for (int i = 0; i < labels.length; i++) {
      if (labels[i] == label) {
        sum = sum.plus(amounts.get(i).get(group));
      }
    }
    return sum;
  }

  /** Sum over the marked segments, each in its own group's seasons. */
  Amounts marksTogether() {
    Amounts sum = Amounts.NONE;
    for (int group = 0; group < groups(); group++) {
      sum = sum.plus(sum(group, group));
    }
    return sum;
  }

  /** Sum over the controls: means over the groups, each weighing by its marked exposure. */
  Amounts controlsTogether() {
    double[] shares = groupShares();
    double before = 0;
    double exposureBefore = 0;
    double after = 0;
    double exposureAfter = 0;
    for (int group = 0; group < groups(); group++) {
      Amounts sum = sum(CONTROL, group);
      before += shares[group] * sum.metresBefore();
      exposureBefore += shares[group] * sum.exposureBefore();
      after += shares[group] * sum.metresAfter();
      exposureAfter += shares[group] * sum.exposureAfter();
    }
    return new Amounts(before, exposureBefore, after, exposureAfter);
  }

  /** Share of each group in the marked exposure. */
  private double[] groupShares() {
    double[] shares = new double[groups()];
    double all = 0;
    for (int i = 0; i < labels.length; i++) {
      if (labels[i] != CONTROL) {
        double weight = amounts.get(i).get(labels[i]).weight();
        shares[labels[i]] += weight;
        all += weight;
      }
    }
    for (int group = 0; group < shares.length; group++) {
      shares[group] /= all;
    }
    return shares;
  }

  /** Difference in differences: marked change less control change. */
  DifferenceOfMeans difference() {
    int most = labels.length;
    double[] markedChanges = new double[most];
    double[] markedWeights = new double[most];
    double[] controlChanges = new double[most];
    double[] controlWeights = new double[most];
    double[] shares = groupShares();
    int marked = 0;
    int controls = 0;
    for (int i = 0; i < most; i++) {
      List<Amounts> own = amounts.get(i);
      if (labels[i] == CONTROL) {
        for (int group = 0; group < shares.length; group++) {
          controlChanges[controls] += shares[group] * own.get(group).change();
          controlWeights[controls] += shares[group] * own.get(group).weight();
        }
        controls++;
      } else {
        markedChanges[marked] = own.get(labels[i]).change();
        markedWeights[marked] = own.get(labels[i]).weight();
        marked++;
      }
    }
    return DifferenceOfMeans.of(
        GroupChange.of(markedChanges, markedWeights, marked),
        GroupChange.of(controlChanges, controlWeights, controls));
  }
}
