package org.meadowmark.core.write.proposal;

import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import org.meadowmark.core.rank.zone.Zone;
import org.meadowmark.core.rank.zone.ZonePlan;

/**
 * What stands on the sheet of one zone.
 *
 * @param survey what all sheets share
 * @param plan the plan that the zone is part of
 * @param zone the zone; its id names the files, so it has only ASCII letters, digits, hyphens and
 *     underscores
 * @param channel name of the channel, or names with a comma between
 * @param evidence lines of the evidence table, in order
 * @param uncertainty sentences on how sure the numbers are
 */
public record ZoneSheet(
    SheetSurvey survey,
    ZonePlan plan,
    Zone zone,
    String channel,
    List<EvidenceRow> evidence,
    List<String> uncertainty) {
  private static final Pattern FILE_NAME = Pattern.compile("[A-Za-z0-9_-]+");

  /**
   * Keeps copies of the lists and refuses a zone whose id could lead out of the folder of the
   * sheets.
   *
   * @param survey what all sheets share
   * @param plan the plan that the zone is part of
   * @param zone the zone; its id names the files
   * @param channel name of the channel, or names with a comma between
   * @param evidence lines of the evidence table, in order
   * @param uncertainty sentences on how sure the numbers are
   * @throws NullPointerException if anything is null
   * @throws IllegalArgumentException if the zone's id has other characters than a file name may
   *     have
   */
  public ZoneSheet {
    Objects.requireNonNull(survey, "survey");
    Objects.requireNonNull(plan, "plan");
    Objects.requireNonNull(zone, "zone");
    Objects.requireNonNull(channel, "channel");
    evidence = List.copyOf(evidence);
    uncertainty = List.copyOf(uncertainty);
    if (!FILE_NAME.matcher(zone.id()).matches()) {
      throw new IllegalArgumentException("zone id cannot name a file: " + zone.id());
    }
  }
}
