package org.meadowmark.core.rank.zone.choice;

/**
 * The best choice on a forest when metres and zones have a price instead of a limit, and the best
 * with each segment in it: a dynamic programme upwards and downwards, linear in segments.
 *
 * <p>With credits a chosen segment gets a zone's price back for each of its cuts. As a cut parts no
 * more than one zone into two, the best priced choice plus the budget is then an upper bound for
 * the network with its loops (Lagrangian relaxation: Fisher 1981, Management Science 27:1–18, from
 * memory). Without credits it is one for the forest.
 */
final class PricedForest {
  final Forest forest;
  final Prices prices;

  /** Best below a segment that is chosen, its zone not paid yet. */
  final double[] in;

  /** Best below a segment that is not chosen. */
  final double[] out;

  /** Best of everything else for a chosen segment, its zone paid. */
  final double[] besideIn;

  /** Best of everything else for a segment that is not chosen. */
  final double[] besideOut;

  /** Best below a junction whose zone is paid for elsewhere. */
  final double[] open;

  /** Best below a junction with none chosen. */
  final double[] closed;

  /** Best of everything outside the part below a junction whose zone is paid. */
  final double[] besideOpen;

  /** Best of everything outside the part below a junction with none chosen. */
  final double[] besideClosed;

  /** Best priced choice. */
  private double best;

  /** What the choice breaks or leaves of the limits. */
  private double chosenMetres;

  private int chosenZones;
  private final boolean[] chosen;

  PricedForest(Forest forest, Prices prices) {
    this.forest = forest;
    this.prices = prices;
    int segments = forest.core.size();
    int junctions = forest.members.length;
    in = new double[segments];
    out = new double[segments];
    besideIn = new double[segments];
    besideOut = new double[segments];
    open = new double[junctions];
    closed = new double[junctions];
    besideOpen = new double[junctions];
    besideClosed = new double[junctions];
    chosen = new boolean[segments];
    upwards();
    choose();
    downwards();
  }

  double best() {
    return best;
  }

  double chosenMetres() {
    return chosenMetres;
  }

  /** Zones of the best priced choice, less credits. */
  int chosenZones() {
    return chosenZones;
  }

  boolean[] chosen() {
    return chosen.clone();
  }

  double upperBound(double metres, int zones) {
    return best + prices.budget(metres, zones);
  }

  /** Upper bound of choices with a segment in them. */
  double upperBoundWith(int segment, double metres, int zones) {
    return in[segment] + besideIn[segment] + prices.budget(metres, zones);
  }

  double bestOfTree(int root) {
    return Math.max(out[root], in[root] - prices.perZone());
  }

  private void upwards() {
    Core core = forest.core;
    for (int at = core.size() - 1; at >= 0; at--) {
      int i = forest.order[at];
      double taken = core.values[i] - prices.perMetre() * core.lengths[i];
      taken += prices.perZone() * forest.cutsAt[i];
      double left = 0;
      for (int q : forest.junctionsBelow[i]) {
        for (int j : forest.below[q]) {
          open[q] += Math.max(in[j], out[j]);
          closed[q] += out[j];
        }
        taken += open[q];
        left += Math.max(closed[q], open[q] - prices.perZone());
      }
      in[i] = taken;
      out[i] = left;
      if (forest.junctionAbove[i] < 0) {
        best += bestOfTree(i);
      }
    }
  }

  private void choose() {
    boolean[] openJunction = new boolean[open.length];
    for (int i : forest.order) {
      int q = forest.junctionAbove[i];
      boolean free = q >= 0 && openJunction[q];
      chosen[i] = free ? in[i] > out[i] : q < 0 && in[i] - prices.perZone() > out[i];
      if (chosen[i]) {
        chosenMetres += forest.core.lengths[i];
        chosenZones += q < 0 ? 1 : 0;
        chosenZones -= forest.cutsAt[i];
      }
      for (int below : forest.junctionsBelow[i]) {
        boolean opens = !chosen[i] && open[below] - prices.perZone() > closed[below];
        openJunction[below] = chosen[i] || opens;
        chosenZones += opens ? 1 : 0;
      }
    }
  }

  private void downwards() {
    double price = prices.perZone();
    for (int i : forest.order) {
      int above = forest.junctionAbove[i];
      if (above < 0) {
        double others = best - bestOfTree(i);
        besideIn[i] = others - price;
        besideOut[i] = others;
      } else {
        double most = Math.max(in[i], out[i]);
        besideIn[i] = besideOpen[above] + open[above] - most;
        besideOut[i] = Math.max(besideIn[i], besideClosed[above] + closed[above] - out[i]);
      }
      for (int q : forest.junctionsBelow[i]) {
        double whenIn = in[i] - open[q] + besideIn[i];
        double whenOut = out[i] - Math.max(closed[q], open[q] - price) + besideOut[i];
        besideOpen[q] = Math.max(whenIn, whenOut - price);
        besideClosed[q] = whenOut;
      }
    }
  }
}
