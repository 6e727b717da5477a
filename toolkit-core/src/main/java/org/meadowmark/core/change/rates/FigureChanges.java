package org.meadowmark.core.change.rates;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.change.Interval;
import org.meadowmark.core.change.Scope;
import org.meadowmark.core.change.Scopes;
import org.meadowmark.core.change.SeasonPair;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.BedMeasure;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.measure.Fragmentation;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.model.MapArea;

/**
 * Change of fragmentation, connectivity and damage by management area.
 *
 * <p>The interval is that of sums over beds drawn again, moved to the value of the area: pieces
 * that reach over several beds are counted in the value, not in the interval. Time grows with draws
 * times beds.
 */
public final class FigureChanges {
  private final SeasonPair pair;
  private final double crossingMetres;
  private final BedBootstrap bootstrap;

  private FigureChanges(SeasonPair pair, double crossingMetres, BedBootstrap bootstrap) {
    this.pair = pair;
    this.crossingMetres = crossingMetres;
    this.bootstrap = bootstrap;
  }

  /** A figure of one scope is numerator / denominator, each a sum over beds. */
  private record Parts(double above, double below) {}

  private record BedPair(Scope scope, BedMeasure earlier, BedMeasure later) {}

  /**
   * {@return changes by scope, then figure}
   *
   * @param pair the two surveys of the season, matched and measured
   * @param crossingMetres crossing distance of headline figures
   * @param bootstrap draws of beds
   */
  public static List<FigureChange> of(
      SeasonPair pair, double crossingMetres, BedBootstrap bootstrap) {
    return new FigureChanges(pair, crossingMetres, bootstrap).changes();
  }

  private List<FigureChange> changes() {
    Scopes scopes = new Scopes(pair.later().mapped().managementAreas());
    Map<Scope, AreaMeasure> earlier = byScope(pair.earlier().measurement().areas());
    Map<Scope, AreaMeasure> later = byScope(pair.later().measurement().areas());
    List<BedPair> beds = beds(scopes);
    List<FigureChange> changes = new ArrayList<>();
    for (Scope scope : scopes.all()) {
      List<BedPair> inside =
          beds.stream()
              .filter(bed -> scope.equals(Scope.WHOLE) || bed.scope().equals(scope))
              .toList();
      for (ChangeFigure figure : ChangeFigure.values()) {
        OptionalDouble before = value(earlier.get(scope), figure);
        OptionalDouble after = value(later.get(scope), figure);
        if (before.isPresent() || after.isPresent()) {
          FigureChange change =
              new FigureChange(pair.season(), scope, figure, before, after, Optional.empty());
          changes.add(
              new FigureChange(
                  pair.season(), scope, figure, before, after, interval(change, inside)));
        }
      }
    }
    return changes;
  }

  private static Map<Scope, AreaMeasure> byScope(List<AreaMeasure> areas) {
    Map<Scope, AreaMeasure> byScope = new HashMap<>();
    for (AreaMeasure area : areas) {
      byScope.put(
          switch (area.kind()) {
            case MANAGEMENT_AREA ->
                new Scope(area.kind(), area.area().map(MapArea::id).orElseThrow(), area.label());
            case OUTSIDE_MANAGEMENT_AREAS -> Scope.OUTSIDE;
            case WHOLE_SURVEY -> Scope.WHOLE;
          },
          area);
    }
    return byScope;
  }

  private List<BedPair> beds(Scopes scopes) {
    Map<String, BedMeasure> earlier = new HashMap<>();
    pair.earlier().measurement().beds().forEach(bed -> earlier.put(bed.bed().id(), bed));
    List<BedPair> beds = new ArrayList<>();
    for (BedMeasure bed : pair.later().measurement().beds()) {
      BedMeasure before = earlier.get(bed.bed().id());
      if (before != null) {
        beds.add(new BedPair(scopes.ofPolygon(bed.bed().geometry()), before, bed));
      }
    }
    return beds;
  }

  private OptionalDouble value(AreaMeasure area, ChangeFigure figure) {
    if (area == null) {
      return OptionalDouble.empty();
    }
    Parts parts = parts(area.damage(), area.fragmentation(), figure);
    if (!(parts.below() > 0)) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(figure.factor() * of(figure, parts.above(), parts.below()));
  }

  private static double of(ChangeFigure figure, double above, double below) {
    return figure == ChangeFigure.CONNECTED_AREA ? Math.sqrt(above) : above / below;
  }

  private Parts parts(Damage damage, Fragmentation grass, ChangeFigure figure) {
    double hectares = grass.totalSquareMetres() / Hectare.SQUARE_METRES;
    return switch (figure) {
      case SCARRED_SHARE -> new Parts(damage.scarredSquareMetres(), damage.surveyedSquareMetres());
      case PATCHES -> new Parts(grass.after().patchCount(), 1);
      case PATCH_DENSITY -> new Parts(grass.after().patchCount(), hectares);
      case EDGE_DENSITY -> new Parts(grass.after().edgeMetres(), hectares);
      case EFFECTIVE_MESH ->
          new Parts(
              grass.after().mesh().squareMetres().orElse(0) * grass.totalSquareMetres(),
              grass.totalSquareMetres());
      case CONNECTED_AREA -> {
        OptionalDouble area = connected(grass);
        yield new Parts(area.orElse(0) * area.orElse(0), area.isPresent() ? 1 : 0);
      }
    };
  }

  private OptionalDouble connected(Fragmentation grass) {
    return grass.crossings().stream()
        .filter(crossing -> crossing.distanceMetres() == crossingMetres)
        .filter(crossing -> crossing.after().isPresent())
        .mapToDouble(crossing -> crossing.after().get().equivalentAreaHectares())
        .findFirst();
  }

  private Optional<Interval> interval(FigureChange change, List<BedPair> beds) {
    if (change.ratio().isEmpty()) {
      return Optional.empty();
    }
    ChangeFigure figure = change.figure();
    Parts[] earlier = new Parts[beds.size()];
    Parts[] later = new Parts[beds.size()];
    int[] once = new int[beds.size()];
    for (int i = 0; i < once.length; i++) {
      BedPair bed = beds.get(i);
      earlier[i] = parts(bed.earlier().damage(), bed.earlier().fragmentation(), figure);
      later[i] = parts(bed.later().damage(), bed.later().fragmentation(), figure);
      once[i] = 1;
    }
    double ofBeds = ratio(figure, earlier, later, once);
    if (!(ofBeds > 0) || Double.isInfinite(ofBeds)) {
      return Optional.empty();
    }
    double moved = change.ratio().getAsDouble() / ofBeds;
    return bootstrap
        .interval(once.length, times -> ratio(figure, earlier, later, times))
        .map(limits -> new Interval(moved * limits.low(), moved * limits.high()));
  }

  private static double ratio(ChangeFigure figure, Parts[] earlier, Parts[] later, int[] times) {
    double aboveEarlier = 0;
    double belowEarlier = 0;
    double aboveLater = 0;
    double belowLater = 0;
    for (int i = 0; i < times.length; i++) {
      aboveEarlier += times[i] * earlier[i].above();
      belowEarlier += times[i] * earlier[i].below();
      aboveLater += times[i] * later[i].above();
      belowLater += times[i] * later[i].below();
    }
    return of(figure, aboveLater, belowLater) / of(figure, aboveEarlier, belowEarlier);
  }
}
