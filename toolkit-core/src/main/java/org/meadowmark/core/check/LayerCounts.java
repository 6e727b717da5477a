package org.meadowmark.core.check;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.model.MetricSurvey;

/** Counts, at the end, how many features of each layer went which way. */
public final class LayerCounts {
  private record Key(LayerRole role, String file, String layer) {}

  private record RoleRef(LayerRole role, FeatureRef ref) {}

  private LayerCounts() {}

  /**
   * {@return the counts of the layers as read, brought up to date with what the later stages left
   * out and repaired}
   *
   * @param checked the layers as read
   * @param survey what reaches the measurement
   * @param log the findings of all stages
   */
  public static List<LayerCount> of(CheckedSurvey checked, MetricSurvey survey, FindingLog log) {
    Set<RoleRef> repairedRefs = new HashSet<>();
    for (Finding finding : log.sorted()) {
      if (finding.treatment() == Treatment.REPAIRED && !finding.where().featureId().isEmpty()) {
        repairedRefs.add(new RoleRef(finding.role(), finding.where()));
      }
    }
    Map<Key, long[]> usedAndRepaired = new HashMap<>();
    count(LayerRole.SCARS, survey.scars(), repairedRefs, usedAndRepaired);
    count(LayerRole.BEDS, survey.beds(), repairedRefs, usedAndRepaired);
    count(LayerRole.CHANNELS, survey.channels(), repairedRefs, usedAndRepaired);
    count(LayerRole.MANAGEMENT_AREAS, survey.managementAreas(), repairedRefs, usedAndRepaired);
    count(LayerRole.SURVEYED_AREA, survey.surveyedArea(), repairedRefs, usedAndRepaired);
    count(LayerRole.BARRIERS, survey.barriers(), repairedRefs, usedAndRepaired);
    return checked.layers().stream()
        .map(CheckedLayer::count)
        .map(c -> now(c, usedAndRepaired))
        .toList();
  }

  private static void count(
      LayerRole role,
      List<? extends Located> features,
      Set<RoleRef> repairedRefs,
      Map<Key, long[]> usedAndRepaired) {
    for (Located feature : features) {
      FeatureRef ref = feature.ref();
      long[] counts =
          usedAndRepaired.computeIfAbsent(new Key(role, ref.file(), ref.layer()), k -> new long[2]);
      counts[0]++;
      if (repairedRefs.contains(new RoleRef(role, ref))) {
        counts[1]++;
      }
    }
  }

  private static LayerCount now(LayerCount first, Map<Key, long[]> usedAndRepaired) {
    if (first.role() == LayerRole.DEPTH) {
      return first;
    }
    Key key = new Key(first.role(), first.file(), first.layer());
    long[] counts = usedAndRepaired.getOrDefault(key, new long[2]);
    return new LayerCount(
        first.role(),
        first.file(),
        first.layer(),
        first.crs(),
        first.read(),
        counts[0],
        counts[1],
        first.read() - counts[0]);
  }
}
