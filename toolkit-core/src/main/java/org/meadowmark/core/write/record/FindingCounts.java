package org.meadowmark.core.write.record;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;

/** Counts findings of one kind. */
public final class FindingCounts {
  /**
   * How often a finding of one code, level and treatment occurs.
   *
   * @param code code
   * @param level level
   * @param treatment treatment
   * @param count how often
   */
  public record Count(
      FindingCode code, Finding.Level level, Finding.Treatment treatment, long count) {}

  private static final Comparator<Count> ORDER =
      Comparator.comparing(Count::level).thenComparing(Count::code).thenComparing(Count::treatment);

  private FindingCounts() {}

  /**
   * Counts by level (errors first), then code, then treatment.
   *
   * @param findings findings in any order
   * @return a row for each code, level and treatment that occurs
   */
  public static List<Count> of(Collection<Finding> findings) {
    Map<Count, Long> counts = new TreeMap<>(ORDER);
    for (Finding finding : findings) {
      counts.merge(
          new Count(finding.code(), finding.level(), finding.treatment(), 0), 1L, Long::sum);
    }
    return counts.entrySet().stream()
        .map(
            e ->
                new Count(
                    e.getKey().code(), e.getKey().level(), e.getKey().treatment(), e.getValue()))
        .toList();
  }
}
