package org.meadowmark.core.change.rates;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.meadowmark.core.change.Season;
import org.meadowmark.core.change.SeasonPair;
import org.meadowmark.core.change.match.ChangeClass;
import org.meadowmark.core.change.match.ScarChange;
import org.meadowmark.core.change.match.ScarLink;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.model.Scar;

/**
 * Follows every scar from its first sight to the survey at which it was gone or last seen.
 *
 * <p>Its width at first sight is what its edges still have to close, whatever its age then. Only
 * lines in beds whose width was measured are followed; where a scar became several, the one with
 * most metres in common is followed. Where a survey did not look, the scar is taken as last seen
 * before. Time linear in scars and seasons.
 */
public final class ClosingObservations {
  private final List<SeasonPair> pairs;
  private final double excavationDoublingMetres;
  private final List<Map<String, ScarChange>> changes = new ArrayList<>();
  private final List<Map<String, ScarLink>> next = new ArrayList<>();
  private final List<Set<String>> known = new ArrayList<>();

  private ClosingObservations(List<SeasonPair> pairs, double excavationDoublingMetres) {
    this.pairs = pairs;
    this.excavationDoublingMetres = excavationDoublingMetres;
    for (SeasonPair pair : pairs) {
      Map<String, ScarChange> byId = new HashMap<>();
      pair.match().earlier().forEach(change -> byId.put(change.id(), change));
      changes.add(byId);
      Map<String, ScarLink> most = new HashMap<>();
      Set<String> linked = new HashSet<>();
      for (ScarLink link : pair.match().links()) {
        most.merge(
            link.earlierId(),
            link,
            (one, other) -> one.earlierMetres() >= other.earlierMetres() ? one : other);
        linked.add(link.laterId());
      }
      next.add(most);
      known.add(linked);
    }
  }

  /**
   * {@return observations in order of first sight, then of scars}
   *
   * @param pairs surveys in order of time, each later one the next earlier one
   * @param excavationDoublingMetres depth of excavation that doubles the time
   */
  public static List<ClosingObservation> of(
      List<SeasonPair> pairs, double excavationDoublingMetres) {
    return new ClosingObservations(pairs, excavationDoublingMetres).follow();
  }

  private List<ClosingObservation> follow() {
    List<ClosingObservation> observations = new ArrayList<>();
    for (int first = 0; first < pairs.size(); first++) {
      SeasonPair pair = pairs.get(first);
      Map<String, ScarRecovery> recoveries = new HashMap<>();
      pair.earlier().recovery().scars().forEach(one -> recoveries.put(one.scarId(), one));
      for (Scar scar : pair.earlier().mapped().scars()) {
        ScarRecovery recovery = recoveries.get(scar.id());
        boolean isFirstSight = first == 0 || !known.get(first - 1).contains(scar.id());
        if (isFirstSight
            && scar.widthSource() == Scar.WidthSource.MEASURED
            && scar.widthMetres() > 0
            && recovery != null
            && !recovery.bedId().isEmpty()) {
          add(scar, recovery.species(), first, observations);
        }
      }
    }
    return observations;
  }

  private void add(Scar scar, String species, int first, List<ClosingObservation> observations) {
    String id = scar.id();
    double open = 0;
    double closed = Double.POSITIVE_INFINITY;
    for (int at = first; at < pairs.size(); at++) {
      ScarChange change = changes.get(at).get(id);
      double years =
          new Season(pairs.get(first).earlier().date(), pairs.get(at).later().date()).years();
      if (change == null || change.change() == ChangeClass.NOT_COMPARABLE) {
        break;
      }
      if (change.change() == ChangeClass.HEALED) {
        closed = years;
        break;
      }
      open = years;
      ScarLink link = next.get(at).get(id);
      if (link == null) {
        break;
      }
      id = link.laterId();
    }
    if (open > 0 || !Double.isInfinite(closed)) {
      observations.add(new ClosingObservation(species, distance(scar), open, closed));
    }
  }

  private double distance(Scar scar) {
    OptionalDouble dug = scar.excavationMetres();
    return scar.widthMetres()
        / 2
        * (1 + (dug.isPresent() ? dug.getAsDouble() / excavationDoublingMetres : 0));
  }
}
