package org.meadowmark.core.change.rates;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.meadowmark.core.change.SeasonPair;
import org.meadowmark.core.change.match.ChangeClass;
import org.meadowmark.core.change.match.ScarChange;
import org.meadowmark.core.rank.ChannelSegment;
import org.meadowmark.core.rank.ScarShare;

/**
 * Gives the new metres of a season to channel segments. Where a scar grew, its new part is taken to
 * lie on segments like the whole scar. Time linear in parts of scars.
 */
public final class SegmentRates {
  private SegmentRates() {}

  /**
   * Rates of a season and the pieces that they are made of.
   *
   * @param rates by segment
   * @param pieceMetres length of every piece of new scar on a segment, for its event size
   */
  public record Rates(List<SegmentRate> rates, List<Double> pieceMetres) {
    /**
     * Keeps copies of the lists.
     *
     * @param rates by segment
     * @param pieceMetres length of every piece of new scar on a segment, for its event size
     * @throws NullPointerException if a list or an entry of it is null
     */
    public Rates {
      rates = List.copyOf(rates);
      pieceMetres = List.copyOf(pieceMetres);
    }
  }

  /**
   * {@return rates of a season by segment}
   *
   * @param pair the two surveys of the season, matched
   * @param segments segments in id order
   * @param bedHectares bed in reach of each that both surveys looked at
   * @param shares parts of the later survey's scars by segment
   * @param cutAgain ids of new scars on ground scarred before
   * @param confidence share of intervals that are to hold the truth
   */
  public static Rates of(
      SeasonPair pair,
      List<ChannelSegment> segments,
      double[] bedHectares,
      List<ScarShare> shares,
      Set<String> cutAgain,
      double confidence) {
    Map<String, ScarChange> changes = new HashMap<>();
    pair.match().later().forEach(change -> changes.put(change.id(), change));
    Map<String, List<Double>> metres = new HashMap<>();
    Map<String, Set<String>> fresh = new HashMap<>();
    List<Double> all = new ArrayList<>();
    double shortest = Double.POSITIVE_INFINITY;
    for (ScarShare share : shares) {
      ScarChange change = changes.get(share.scarId());
      if (change == null || !(change.lengthMetres() > 0)) {
        continue;
      }
      double part = share.lengthMetres() * change.unassignedMetres() / change.lengthMetres();
      if (part > 0) {
        metres.computeIfAbsent(share.segmentId(), id -> new ArrayList<>()).add(part);
        all.add(part);
        shortest = Math.min(shortest, part);
      }
      if (change.change() == ChangeClass.NEW) {
        fresh.computeIfAbsent(share.segmentId(), id -> new HashSet<>()).add(share.scarId());
      }
    }
    double least = Double.isInfinite(shortest) ? 1 : shortest;
    List<SegmentRate> rates = new ArrayList<>();
    for (int i = 0; i < segments.size(); i++) {
      String id = segments.get(i).id();
      double[] pieces =
          metres.getOrDefault(id, List.of()).stream().mapToDouble(Double::doubleValue).toArray();
      double sum = 0;
      for (double piece : pieces) {
        sum += piece;
      }
      Set<String> scars = fresh.getOrDefault(id, Set.of());
      int again = (int) scars.stream().filter(cutAgain::contains).count();
      rates.add(
          new SegmentRate(
              pair.season(),
              segments.get(i),
              bedHectares[i],
              sum,
              PoissonInterval.ofLengths(pieces, least, confidence),
              scars.size(),
              again,
              scars.isEmpty()
                  ? Optional.empty()
                  : Optional.of(BinomialInterval.of(again, scars.size(), confidence))));
    }
    return new Rates(rates, all);
  }
}
