package org.meadowmark.core.plan;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.ScarShare;
import org.meadowmark.core.rank.zone.ZonePlan;

/** Works out {@link RescarRisk} for the scars of a ranking. */
final class RescarRisks {

  private final Map<String, Sum> sums = new HashMap<>();

  /** Sums over the segments of a scar, each by the scar's length on it. */
  private static final class Sum {
    private double rated;
    private double rate;
    private double marked;
    private double compared;
    private double again;
    private boolean inZone;

    private RescarRisk risk() {
      return new RescarRisk(mean(rate, rated), mean(marked, rated), mean(again, compared), inZone);
    }

    private static OptionalDouble mean(double sum, double weight) {
      return weight > 0 ? OptionalDouble.of(sum / weight) : OptionalDouble.empty();
    }
  }

  /**
   * @param visibleYears how long a scar stays visible
   * @param markerEffect part of new scars that a marked zone keeps away
   */
  RescarRisks(ChannelRanking ranking, ZonePlan zones, double visibleYears, double markerEffect) {
    Map<String, RankedSegment> segments = new HashMap<>();
    ranking.segments().forEach(segment -> segments.put(segment.segment().id(), segment));
    Set<String> zoned = new HashSet<>();
    zones.zones().forEach(zone -> zoned.addAll(zone.segmentIds()));
    for (ScarShare share : ranking.shares()) {
      RankedSegment segment = segments.get(share.segmentId());
      if (segment != null && share.lengthMetres() > 0) {
        double kept = zoned.contains(share.segmentId()) ? 1 - markerEffect : 1;
        add(share, segment, visibleYears, kept);
      }
    }
  }

  private void add(ScarShare share, RankedSegment segment, double visibleYears, double kept) {
    Sum sum = sums.computeIfAbsent(share.scarId(), id -> new Sum());
    double metres = share.lengthMetres();
    sum.inZone |= kept < 1;
    if (segment.ratePerHectare().isPresent() && segment.exposureHectares() > 0) {
      double scarredPart =
          segment.evidence().scarredArea().squareMetres()
              / (segment.exposureHectares() * Hectare.SQUARE_METRES);
      double rate = scarredPart / visibleYears;
      sum.rated += metres;
      sum.rate += metres * rate;
      sum.marked += metres * rate * kept;
    }
    segment
        .evidence()
        .reScarredShare()
        .ifPresent(
            again -> {
              sum.compared += metres;
              sum.again += metres * again;
            });
  }

  RescarRisk of(String scarId) {
    Sum sum = sums.get(scarId);
    return sum == null ? RescarRisk.UNKNOWN : sum.risk();
  }
}
