package org.meadowmark.core.measure.connectivity;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Connectivity where the chance of a crossing falls with the width of the gap.
 *
 * <ul>
 *   <li>p*ᵢⱼ is the best product of probabilities over all paths, found as a shortest path of −ln
 *       p.
 *   <li>PC = Σᵢ Σⱼ aᵢ·aⱼ·p*ᵢⱼ / A_L²: Saura and Pascual-Hortal (2007), Landscape and Urban Planning
 *       83:91–103.
 *   <li>ECA = √(Σᵢ Σⱼ aᵢ·aⱼ·p*ᵢⱼ): Saura, Estreguil, Mouton and Rodríguez-Freire (2011), <i>Network
 *       analysis to assess landscape connectivity trends: application to European forests
 *       (1990–2000)</i>, Ecological Indicators 11:407–416.
 *   <li>Importance of a patch with its parts: Saura and Rubio (2010), Ecography 33:523–537.
 * </ul>
 *
 * <p>All is exact but for the cut-off: a path less probable than {@link
 * CrossingModel#probabilityCutoff()} counts as none, which takes at most cut-off · (Σa)² from a
 * numerator, and as much from the numerator of a graph with a patch removed or a gap filled. With
 * no area all indices are 0. Sums are added in an order that the graph alone decides, so results do
 * not depend on the number of threads. Work runs in the fork-join pool of the caller.
 */
public final class ProbabilisticConnectivity {
  private final HabitatGraph graph;
  private final CrossingModel model;
  private final double landscapeHectares;
  private final ProbabilisticIndex index;

  private ProbabilisticConnectivity(
      HabitatGraph graph, CrossingModel model, double landscapeHectares, ProbabilisticIndex index) {
    this.graph = graph;
    this.model = model;
    this.landscapeHectares = landscapeHectares;
    this.index = index;
  }

  /**
   * {@return connectivity under one model}
   *
   * @param graph patches and the gaps between them
   * @param model how the chance of a crossing falls with the width of the gap
   * @param landscapeHectares area A_L that the index is related to, above 0
   * @throws IllegalArgumentException if the model does not fit the graph, or for an area of 0
   */
  public static ProbabilisticConnectivity of(
      HabitatGraph graph, CrossingModel model, double landscapeHectares) {
    return sweep(graph, List.of(model), landscapeHectares).get(0);
  }

  /**
   * Connectivity under several models, with one search a patch for all of them.
   *
   * <p>Time: with r the mean number of nodes within the farthest cut-off and c that of their links,
   * O(n·(c + r·log r + r·models)). Memory O(n + m) a thread.
   *
   * @param graph patches and the gaps between them
   * @param models how the chance of a crossing falls with the width of the gap, one or more
   * @param landscapeHectares area A_L that the indices are related to, above 0
   * @return one each, in the order of the models
   * @throws IllegalArgumentException if a model does not fit the graph, or for an area of 0
   */
  public static List<ProbabilisticConnectivity> sweep(
      HabitatGraph graph, List<CrossingModel> models, double landscapeHectares) {
    Landscape.check(landscapeHectares);
    List<Decay.Exponential> decays = models.stream().map(model -> model.decay(graph)).toList();
    return of(graph, models, landscapeHectares, RowSums.of(graph, decays));
  }

  /**
   * Connectivity under several models, estimated from searches that start at some patches only.
   *
   * <p>Patches are drawn systematically in the order of the nodes with a chance that goes with
   * their area (Madow 1949, <i>On the theory of systematic sampling, II</i>, Annals of Mathematical
   * Statistics 20:333–354, from memory), so that A/n · Σ of their rows is an unbiased estimate of
   * the numerator. Its standard error comes from differences of successive rows (Wolter 1985,
   * <i>Introduction to Variance Estimation</i>, from memory); there are always two rows or more.
   *
   * <p>Time: one search a source.
   *
   * @param graph patches and the gaps between them
   * @param models how the chance of a crossing falls with the width of the gap, one or more
   * @param landscapeHectares area A_L that the indices are related to, above 0
   * @param sample how many sources are drawn, and with what seed
   * @return one each, in the order of the models
   * @throws IllegalArgumentException if a model does not fit the graph, or for an area of 0
   */
  public static List<ProbabilisticConnectivity> estimate(
      HabitatGraph graph, List<CrossingModel> models, double landscapeHectares, Sample sample) {
    Landscape.check(landscapeHectares);
    List<Decay.Exponential> decays = models.stream().map(model -> model.decay(graph)).toList();
    return of(graph, models, landscapeHectares, SampledRows.of(graph, decays, sample));
  }

  private static List<ProbabilisticConnectivity> of(
      HabitatGraph graph,
      List<CrossingModel> models,
      double landscapeHectares,
      RowSums.Sum[] sums) {
    return IntStream.range(0, models.size())
        .mapToObj(
            i ->
                new ProbabilisticConnectivity(
                    graph,
                    models.get(i),
                    landscapeHectares,
                    new ProbabilisticIndex(
                        models.get(i),
                        landscapeHectares,
                        sums[i].numerator(),
                        sums[i].standardError(),
                        sums[i].missed() * models.get(i).probabilityCutoff(),
                        sums[i].numerator() / landscapeHectares / landscapeHectares,
                        Math.sqrt(sums[i].numerator()))))
        .toList();
  }

  /** {@return the index for the whole graph} */
  public ProbabilisticIndex index() {
    return index;
  }

  /**
   * Importance of every patch, by its removal.
   *
   * <p>Time: one search a patch, plus one repair a pair of patches and patch between them that the
   * pair has no equal way round; see {@code docs/connectivity-performance.md} for measured times.
   *
   * @return in order of the nodes
   */
  public List<PatchImportance> importances() {
    Decay decay = model.decay(graph);
    return Landscape.importances(
        graph,
        NodeLosses.of(Component.of(graph, decay.limit()), graph.nodeCount(), decay),
        index.numeratorSquareHectares());
  }

  /**
   * What each filling would restore if it were the only one; gains of several do not add up.
   *
   * <p>The pairs of patches that a filling joins need no link, nor be in one group. A gap filled
   * with its area is one more patch, joined to those at its edge.
   *
   * @param fillings gaps filled together, by numbers of patches of the graph
   * @return in order of the fillings
   * @throws IllegalArgumentException for an unknown patch
   */
  public List<FillingGain> gains(List<Filling> fillings) {
    checkNodes(fillings);
    double numerator = index.numeratorSquareHectares();
    double[] gains = FillingGains.of(graph, model.decay(graph), fillings);
    return IntStream.range(0, gains.length)
        .mapToObj(
            i ->
                new FillingGain(
                    gains[i],
                    gains[i] == 0
                        ? 0
                        : gains[i] / (Math.sqrt(numerator + gains[i]) + Math.sqrt(numerator))))
        .toList();
  }

  /**
   * What several fillings restore together.
   *
   * @param fillings fillings without the area of the gaps themselves
   * @param gains of each alone, as {@link #gains} gave them
   * @return the growth of the numerator under these fillings; they are numbered in the order of the
   *     list
   * @throws IllegalArgumentException for an unknown patch, or where a filling adds area
   */
  public JointFillings joint(List<Filling> fillings, List<FillingGain> gains) {
    checkNodes(fillings);
    return new JointFillings(
        graph,
        model.decay(graph),
        index.numeratorSquareHectares(),
        fillings,
        gains.stream().mapToDouble(FillingGain::numeratorGainSquareHectares).toArray());
  }

  private void checkNodes(List<Filling> fillings) {
    for (Filling filling : fillings) {
      for (int node : filling.nodes()) {
        if (node < 0 || node >= graph.nodeCount()) {
          throw new IllegalArgumentException(
              "filling joins node " + node + " of " + graph.nodeCount());
        }
      }
    }
  }
}
