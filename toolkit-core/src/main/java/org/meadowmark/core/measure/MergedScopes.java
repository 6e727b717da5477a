package org.meadowmark.core.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.meadowmark.core.measure.PartEvidence.Scope;
import org.meadowmark.core.measure.connectivity.Sample;

/**
 * Puts the pieces of a line of totals together, in the order of the whole survey.
 *
 * @param parts all parts
 * @param patches whole patches
 * @param meadowRanks place of each meadow in the whole, by part
 * @param after whether scars are taken out
 * @param mostPatches most pieces for which connectivity is exact
 * @param sample what is drawn beyond it
 */
record MergedScopes(
    List<MergedPart> parts,
    MergedPatches patches,
    int[][] meadowRanks,
    boolean after,
    int mostPatches,
    Sample sample) {

  private record WholeCrumb(int meadow, int local, double squareMetres) {}

  private Scope scope(int part, int line) {
    PartEvidence.Line evidence = parts.get(part).lines().get(line);
    return after ? evidence.after() : evidence.before();
  }

  /**
   * The columns of a line.
   *
   * @param whole whether it is that of the whole survey
   */
  ScopeColumns of(int line, boolean whole) {
    int[][] numbers = new int[parts.size()][];
    int[] starts = new int[patches.count() + 1];
    for (int p = 0; p < numbers.length; p++) {
      for (int patch : scope(p, line).patches()) {
        starts[patches.numbers()[p][patch] + 1]++;
      }
    }
    Arrays.parallelPrefix(starts, Integer::sum);
    int count = starts[patches.count()];
    double[] gridAreas = new double[count];
    double[] areas = new double[count];
    double[] complete = new double[count];
    double[] perimeters = new double[count];
    int[] next = starts.clone();
    for (int p = 0; p < numbers.length; p++) {
      Scope scope = scope(p, line);
      numbers[p] = new int[scope.patches().length];
      for (int i = 0; i < numbers[p].length; i++) {
        int number = next[patches.numbers()[p][scope.patches()[i]]]++;
        numbers[p][i] = number;
        gridAreas[number] = scope.gridAreas()[i];
        areas[number] = scope.squareMetres()[i];
        complete[number] = scope.completeSquareMetres()[i];
        perimeters[number] = scope.perimeterMetres()[i];
      }
    }
    PatchFigures figures =
        new PatchFigures(
            areas,
            complete,
            perimeters,
            whole ? Arrays.stream(perimeters).sum() : edge(line),
            crumbs(line),
            nearest(line));
    return new ScopeColumns(
        figures,
        new PatchNetwork(
            links(line, numbers, count),
            gridAreas,
            count > mostPatches ? Optional.of(sample) : Optional.empty()));
  }

  private double edge(int line) {
    double[] edges = new double[patches.count()];
    for (int p = 0; p < parts.size(); p++) {
      Scope scope = scope(p, line);
      for (int i = 0; i < scope.edges().length; i++) {
        edges[patches.numbers()[p][scope.edgePatches()[i]]] = scope.edges()[i];
      }
    }
    double sum = 0;
    for (double edge : edges) {
      sum += edge;
    }
    return sum;
  }

  private double[] crumbs(int line) {
    int[] starts = new int[patches.count() + 1];
    for (int p = 0; p < parts.size(); p++) {
      for (int patch : scope(p, line).patchCrumbs()) {
        starts[patches.numbers()[p][patch] + 1]++;
      }
    }
    Arrays.parallelPrefix(starts, Integer::sum);
    double[] ofPatches = new double[starts[patches.count()]];
    List<WholeCrumb> others = new ArrayList<>();
    for (int p = 0; p < parts.size(); p++) {
      Scope scope = scope(p, line);
      int cut = scope.patchCrumbs().length;
      for (int i = 0; i < cut; i++) {
        ofPatches[starts[patches.numbers()[p][scope.patchCrumbs()[i]]]++] =
            scope.crumbSquareMetres()[i];
      }
      int[] meadows = parts.get(p).crumbMeadows(after);
      for (int i = 0; i < scope.crumbs().length; i++) {
        int crumb = scope.crumbs()[i];
        others.add(
            new WholeCrumb(
                meadowRanks[p][meadows[crumb]], crumb, scope.crumbSquareMetres()[cut + i]));
      }
    }
    others.sort(
        Comparator.comparingInt(WholeCrumb::meadow).thenComparingInt(WholeCrumb::local));
    double[] all = Arrays.copyOf(ofPatches, ofPatches.length + others.size());
    for (int i = 0; i < others.size(); i++) {
      all[ofPatches.length + i] = others.get(i).squareMetres;
    }
    return all;
  }

  private double[] nearest(int line) {
    return IntStream.range(0, parts.size())
        .flatMap(
            p -> Arrays.stream(scope(p, line).nearest()).map(patch -> patches.numbers()[p][patch]))
        .sorted()
        .mapToDouble(number -> patches.nearestMetres()[number])
        .toArray();
  }

  /** Ways in order of their pieces; those of one first piece are all in one part, in order. */
  private Links links(int line, int[][] numbers, int count) {
    int[] starts = new int[count + 1];
    for (int p = 0; p < numbers.length; p++) {
      for (int first : scope(p, line).firsts()) {
        starts[numbers[p][first] + 1]++;
      }
    }
    Arrays.parallelPrefix(starts, Integer::sum);
    int[] firsts = new int[starts[count]];
    int[] seconds = new int[firsts.length];
    double[] metres = new double[firsts.length];
    for (int p = 0; p < numbers.length; p++) {
      Scope scope = scope(p, line);
      for (int i = 0; i < scope.firsts().length; i++) {
        int first = numbers[p][scope.firsts()[i]];
        int place = starts[first]++;
        firsts[place] = first;
        seconds[place] = numbers[p][scope.seconds()[i]];
        metres[place] = scope.metres()[i];
      }
    }
    return Links.of(firsts, seconds, metres);
  }
}
