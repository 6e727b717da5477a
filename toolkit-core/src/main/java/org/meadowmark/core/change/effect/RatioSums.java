package org.meadowmark.core.change.effect;

/** Sums of marked and control segments by group under some labels, and the ratio made of them. */
final class RatioSums {
  private final Design design;
  private final int[] labels;
  private final Amounts[] marked;
  private final Amounts[] controls;

  RatioSums(Design design, int[] labels) {
    this.design = design;
    this.labels = labels;
    marked = new Amounts[design.groups()];
    controls = new Amounts[design.groups()];
    for (int group = 0; group < marked.length; group++) {
      Amounts markedSum = Amounts.NONE;
      Amounts controlSum = Amounts.NONE;
      for (int i = 0; i < labels.length; i++) {
        if (labels[i] == group) {
          markedSum = markedSum.plus(design.amounts().get(i).get(group));
        } else if (labels[i] == Design.CONTROL) {
          controlSum = controlSum.plus(design.amounts().get(i).get(group));
        }
      }
      marked[group] = markedSum;
      controls[group] = controlSum;
    }
  }

  /** Metres seen after divided by metres expected; not finite where one of them is undefined. */
  double ratio() {
    return ratio(-1);
  }

  /** The same with one segment left out. */
  double ratioWithout(int segment) {
    return ratio(segment);
  }

  private double ratio(int left) {
    double seen = 0;
    double expected = 0;
    for (int group = 0; group < marked.length; group++) {
      Amounts marks = marked[group];
      Amounts others = controls[group];
      if (left >= 0 && labels[left] == group) {
        marks = marks.minus(design.amounts().get(left).get(group));
      } else if (left >= 0 && labels[left] == Design.CONTROL) {
        others = others.minus(design.amounts().get(left).get(group));
      }
      // What a subtraction leaves of nothing may not be a group of its own.
      if (marks.exposureAfter() > 1e-9 * marked[group].exposureAfter()) {
        seen += marks.metresAfter();
        expected += expected(marks, others);
      }
    }
    return seen / expected;
  }

  private static double expected(Amounts marks, Amounts others) {
    return marks.rateBefore() * marks.exposureAfter() * others.rateAfter() / others.rateBefore();
  }

  /**
   * ln R over its standard error by the linear terms of each segment's part in it. Infinite where
   * nothing was seen after, or nothing was expected; 0 where neither.
   */
  double statistic() {
    double seen = 0;
    double expected = 0;
    double[] parts = new double[marked.length];
    for (int group = 0; group < parts.length; group++) {
      parts[group] = marked[group].weight() > 0 ? expected(marked[group], controls[group]) : 0;
      seen += marked[group].metresAfter();
      expected += parts[group];
    }
    if (!(expected > 0) || Double.isInfinite(expected)) {
      return seen > 0 && expected == 0 ? Double.POSITIVE_INFINITY : 0;
    }
    if (seen == 0) {
      return Double.NEGATIVE_INFINITY;
    }
    double markedSquares = 0;
    double controlSquares = 0;
    int marks = 0;
    for (int i = 0; i < labels.length; i++) {
      if (labels[i] == Design.CONTROL) {
        double part = 0;
        for (int group = 0; group < parts.length; group++) {
          Amounts own = design.amounts().get(i).get(group);
          part += parts[group] / expected * relative(own, controls[group]);
        }
        controlSquares += part * part;
      } else {
        Amounts own = design.amounts().get(i).get(labels[i]);
        Amounts sum = marked[labels[i]];
        double part =
            own.metresAfter() / seen
                - parts[labels[i]]
                    / expected
                    * (share(own.metresBefore(), sum.metresBefore())
                        + own.exposureAfter() / sum.exposureAfter()
                        - own.exposureBefore() / sum.exposureBefore());
        markedSquares += part * part;
        marks++;
      }
    }
    int others = labels.length - marks;
    double variance =
        markedSquares * marks / (marks - 1.0) + controlSquares * others / (others - 1.0);
    double log = Math.log(seen / expected);
    return variance > 0 ? log / Math.sqrt(variance) : 0;
  }

  private static double relative(Amounts own, Amounts sum) {
    return share(own.metresAfter(), sum.metresAfter())
        - own.exposureAfter() / sum.exposureAfter()
        - share(own.metresBefore(), sum.metresBefore())
        + own.exposureBefore() / sum.exposureBefore();
  }

  private static double share(double part, double sum) {
    return sum > 0 ? part / sum : 0;
  }
}
