package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntFunction;
import org.meadowmark.core.measure.connectivity.BinaryConnectivity;
import org.meadowmark.core.measure.connectivity.CrossingModel;
import org.meadowmark.core.measure.connectivity.Filling;
import org.meadowmark.core.measure.connectivity.FillingGain;
import org.meadowmark.core.measure.connectivity.HabitatGraph;
import org.meadowmark.core.measure.connectivity.PatchImportance;
import org.meadowmark.core.measure.connectivity.ProbabilisticConnectivity;
import org.meadowmark.core.measure.connectivity.ProbabilisticIndex;
import org.meadowmark.core.measure.connectivity.Sample;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.survey.Parameters;

/**
 * Connectivity of the patches of one scope. Areas are hectares on the ground; the landscape area
 * that indices are related to is the mapped grass of the scope before scarring.
 *
 * <p>A single gap wider than the largest crossing distance of the sweep is not crossed at all.
 */
final class ConnectivityMeasurer {

  private final HabitatGraph graph;
  private final double landscapeHectares;
  private final Optional<Sample> sample;

  /**
   * Prepares the graph.
   *
   * @param patchSquareMetres areas of the patches
   * @param pieces ways between them
   * @param totalSquareMetres area of the landscape
   */
  ConnectivityMeasurer(double[] patchSquareMetres, PatchNetwork pieces, double totalSquareMetres) {
    double[] hectares = new double[patchSquareMetres.length];
    for (int i = 0; i < hectares.length; i++) {
      hectares[i] = patchSquareMetres[i] / Hectare.SQUARE_METRES;
    }
    Links links = pieces.crossings();
    graph =
        HabitatGraph.ofDistances(hectares, links.firsts(), links.seconds(), links.lengthsMetres());
    landscapeHectares = totalSquareMetres / Hectare.SQUARE_METRES;
    sample = pieces.sample();
  }

  /** Indices at each distance, in order. */
  List<Connectedness> sweep(List<Double> distancesMetres) {
    List<CrossingModel> models = distancesMetres.stream().map(ConnectivityMeasurer::model).toList();
    List<ProbabilisticConnectivity> probabilistic =
        sample.isPresent()
            ? ProbabilisticConnectivity.estimate(graph, models, landscapeHectares, sample.get())
            : ProbabilisticConnectivity.sweep(graph, models, landscapeHectares);
    List<Connectedness> sweep = new ArrayList<>();
    for (int i = 0; i < models.size(); i++) {
      ProbabilisticIndex index = probabilistic.get(i).index();
      sweep.add(
          new Connectedness(
              integralIndex(distancesMetres.get(i)),
              index.probabilityOfConnectivity(),
              index.equivalentAreaHectares(),
              sample.isPresent()
                  ? OptionalDouble.of(index.equivalentAreaStandardErrorHectares())
                  : OptionalDouble.empty()));
    }
    return sweep;
  }

  /** It counts links, so that it needs every one of them. */
  private OptionalDouble integralIndex(double distanceMetres) {
    return sample.isPresent()
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            BinaryConnectivity.of(graph, distanceMetres + PieceGraph.EQUAL_METRES)
                .index(landscapeHectares)
                .integralIndexOfConnectivity());
  }

  /** What each patch is worth and what filling each scar would restore. */
  ConnectivityDetail detail(
      List<Patch> patches, GapColumns gaps, IntFunction<String> scarIds, Parameters parameters) {
    double distance = parameters.crossingDistanceMetres();
    ProbabilisticConnectivity connectivity =
        ProbabilisticConnectivity.of(graph, model(distance), landscapeHectares);
    List<PatchWorth> worth = new ArrayList<>();
    for (PatchImportance importance : connectivity.importances()) {
      worth.add(
          new PatchWorth(
              patches.get(importance.node()).id(),
              importance.totalPercent(),
              importance.withinPercent(),
              importance.fluxPercent(),
              importance.connectorPercent()));
    }
    Map<Integer, List<Filling.Join>> byScar = new LinkedHashMap<>();
    for (int i = 0; i < gaps.count(); i++) {
      byScar
          .computeIfAbsent(gaps.scar(i), scar -> new ArrayList<>())
          .add(Filling.Join.of(0, gaps.first(i), gaps.second(i)));
    }
    List<Filling> ofScars = byScar.values().stream().map(Filling::new).toList();
    List<FillingGain> gains = connectivity.gains(ofScars);
    List<ScarFilling> fillings = new ArrayList<>();
    for (Map.Entry<Integer, List<Filling.Join>> scar : byScar.entrySet()) {
      long groups =
          scar.getValue().stream()
              .flatMap(join -> join.nodes().stream())
              .map(patch -> patches.get(patch).groupId())
              .distinct()
              .count();
      fillings.add(
          new ScarFilling(
              scarIds.apply(scar.getKey()),
              scar.getValue().size(),
              Math.toIntExact(groups),
              gains.get(fillings.size()).equivalentAreaGainHectares()));
    }
    return new ConnectivityDetail(
        distance, worth, fillings, Optional.of(connectivity.joint(ofScars, gains)));
  }

  /** At a distance of 0 only pieces that touch are linked. */
  private static CrossingModel model(double distanceMetres) {
    return CrossingModel.ofMedianMetres(Math.max(distanceMetres, PieceGraph.EQUAL_METRES));
  }
}
