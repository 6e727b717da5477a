package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.meadowmark.core.measure.connectivity.BinaryConnectivity;
import org.meadowmark.core.measure.connectivity.BinaryIndex;
import org.meadowmark.core.measure.connectivity.CrossingModel;
import org.meadowmark.core.measure.connectivity.Filling;
import org.meadowmark.core.measure.connectivity.FillingGain;
import org.meadowmark.core.measure.connectivity.HabitatGraph;
import org.meadowmark.core.measure.connectivity.PatchImportance;
import org.meadowmark.core.measure.connectivity.ProbabilisticConnectivity;
import org.meadowmark.core.measure.connectivity.ProbabilisticIndex;
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

  ConnectivityMeasurer(double[] patchSquareMetres, PieceGraph pieces, double totalSquareMetres) {
    double[] hectares = new double[patchSquareMetres.length];
    for (int i = 0; i < hectares.length; i++) {
      hectares[i] = patchSquareMetres[i] / Hectare.SQUARE_METRES;
    }
    int count = pieces.crossings().size();
    int[] first = new int[count];
    int[] second = new int[count];
    double[] metres = new double[count];
    for (int i = 0; i < count; i++) {
      PieceGraph.Link link = pieces.crossings().get(i);
      first[i] = link.first();
      second[i] = link.second();
      metres[i] = link.metres();
    }
    graph = HabitatGraph.ofDistances(hectares, first, second, metres);
    landscapeHectares = totalSquareMetres / Hectare.SQUARE_METRES;
  }

  /** Indices at each distance, in order. */
  List<Connectedness> sweep(List<Double> distancesMetres) {
    List<CrossingModel> models = distancesMetres.stream().map(ConnectivityMeasurer::model).toList();
    List<ProbabilisticConnectivity> probabilistic =
        ProbabilisticConnectivity.sweep(graph, models, landscapeHectares);
    List<Connectedness> sweep = new ArrayList<>();
    for (int i = 0; i < models.size(); i++) {
      BinaryIndex binary =
          BinaryConnectivity.of(graph, distancesMetres.get(i) + PieceGraph.EQUAL_METRES)
              .index(landscapeHectares);
      ProbabilisticIndex index = probabilistic.get(i).index();
      sweep.add(
          new Connectedness(
              binary.integralIndexOfConnectivity(),
              index.probabilityOfConnectivity(),
              index.equivalentAreaHectares()));
    }
    return sweep;
  }

  /** What each patch is worth and what filling each scar would restore. */
  ConnectivityDetail detail(
      List<Patch> patches, List<PatchMap.NumberedGap> gaps, Parameters parameters) {
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
    Map<String, List<PatchMap.NumberedGap>> byScar = new LinkedHashMap<>();
    gaps.forEach(
        gap -> byScar.computeIfAbsent(gap.gap().scarId(), id -> new ArrayList<>()).add(gap));
    List<Filling> ofScars = byScar.values().stream().map(ConnectivityMeasurer::filling).toList();
    List<FillingGain> gains = connectivity.gains(ofScars);
    List<ScarFilling> fillings = new ArrayList<>();
    for (Map.Entry<String, List<PatchMap.NumberedGap>> scar : byScar.entrySet()) {
      long groups =
          scar.getValue().stream()
              .flatMapToInt(gap -> IntStream.of(gap.first(), gap.second()))
              .mapToObj(patch -> patches.get(patch).groupId())
              .distinct()
              .count();
      fillings.add(
          new ScarFilling(
              scar.getKey(),
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

  private static Filling filling(List<PatchMap.NumberedGap> gaps) {
    return new Filling(
        gaps.stream().map(gap -> Filling.Join.of(0, gap.first(), gap.second())).toList());
  }
}
