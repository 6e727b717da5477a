package org.meadowmark.core.write.summary;

import java.util.Map;
import java.util.stream.Collectors;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.rank.zone.CoverPoint;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.rank.zone.ZonePlan;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Figures;

/** What the summary says about the zones proposed for marking. */
final class ZoneLines {
  private final ZonePlan plan;
  private final Map<String, String> channelOfSegment;

  ZoneLines(AssessedSurvey assessed) {
    plan = assessed.zones();
    channelOfSegment =
        assessed.ranking().segments().stream()
            .map(RankedSegment::segment)
            .collect(Collectors.toMap(s -> s.id(), s -> s.channel()));
  }

  /** Empty where no zone is proposed. */
  String answer() {
    if (plan.zones().isEmpty()) {
      return "";
    }
    return plan.zones().stream().map(this::named).collect(Collectors.joining("; "))
        + ". "
        + cover()
        + " Sheets for a hearing are under proposals: proposals, not permits.";
  }

  private String named(Zone zone) {
    return zone.id()
        + " on "
        + zone.segmentIds().stream()
            .map(channelOfSegment::get)
            .distinct()
            .collect(Collectors.joining(", "))
        + " ("
        + Figures.length(zone.lengthMetres())
        + " of channel, "
        + Figures.length(zone.scarMetres())
        + " of scars, "
        + Figures.percent(zone.coveredShare())
        + " of all near channels; "
        + devices(zone)
        + Figures.count(zone.markers().size(), "mark", "marks")
        + ")";
  }

  private static String devices(Zone zone) {
    return zone.devices().stream()
        .limit(1)
        .map(device -> device.device().split(":")[0] + ", ")
        .collect(Collectors.joining());
  }

  private String cover() {
    CoverPoint best = plan.best();
    String proof =
        best.isProvenBest()
            ? "No other choice of at most "
                + Figures.count(plan.mostZones(), "zone", "zones")
                + " in "
                + Figures.chosenLength(plan.totalLengthMetres())
                + " covers more"
            : "It is not proven that no other choice covers more; none covers more than "
                + Figures.length(best.upperBoundMetres());
    return (plan.zones().size() == 1 ? "It covers " : "Together they cover ")
        + Figures.length(best.coveredMetres())
        + " of scars. "
        + proof
        + "; worst segments first cover "
        + Figures.length(best.worstFirstMetres())
        + ".";
  }
}
