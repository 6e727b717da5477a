package org.meadowmark.core.write.record;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerCount;

/**
 * The findings of a survey for people (text) and for programs (JSON).
 *
 * <p>The order of what is given does not matter. Time n log n in the findings.
 */
public final class FindingsReport {
  private final List<Finding> findings;
  private final List<LayerCount> counts;

  /**
   * A report.
   *
   * @param findings findings of the survey
   * @param counts features by layer
   */
  public FindingsReport(Collection<Finding> findings, Collection<LayerCount> counts) {
    this.findings = findings.stream().sorted(Finding.ORDER).toList();
    this.counts = counts.stream().sorted(LayerCount.ORDER).toList();
  }

  /**
   * {@return how many findings have a level}
   *
   * @param level error, warning or note
   */
  public long count(Finding.Level level) {
    return findings.stream().filter(finding -> finding.level() == level).count();
  }

  /**
   * {@return lines of text: layers with their counts, then findings by level and code, one a line}
   *
   * @param mostPerCode findings of one code to list before "and n more"; the JSON has all
   */
  public List<String> lines(int mostPerCode) {
    List<String> lines = new ArrayList<>();
    for (LayerCount count : counts) {
      lines.add(
          String.format(
              Locale.ROOT,
              "%s: %s: %s: %d read, %d used (%d repaired), %d skipped, in %s",
              count.file(),
              count.layer(),
              count.role().key(),
              count.read(),
              count.used(),
              count.repaired(),
              count.skipped(),
              count.crs()));
    }
    byCode()
        .forEach(
            (key, members) -> {
              lines.add("");
              lines.add(
                  lower(key.level()) + ": " + key.code().title() + " (" + members.size() + ")");
              members.stream().limit(mostPerCode).forEach(f -> lines.add("  " + oneLine(f)));
              if (members.size() > mostPerCode) {
                lines.add("  and " + (members.size() - mostPerCode) + " more");
              }
            });
    if (!lines.isEmpty()) {
      lines.add("");
    }
    lines.add(totals());
    return lines;
  }

  /** {@return every finding and count as JSON} */
  public String toJson() {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    ObjectNode totals = root.putObject("totals");
    for (Finding.Level level : Finding.Level.values()) {
      totals.put(lower(level), count(level));
    }
    LayerCountJson.putAll(root.putArray("layers"), counts);
    ArrayNode array = root.putArray("findings");
    for (Finding finding : findings) {
      array
          .addObject()
          .put("code", lower(finding.code()))
          .put("level", lower(finding.level()))
          .put("treatment", lower(finding.treatment()))
          .put("role", finding.role().key())
          .put("file", finding.where().file())
          .put("layer", finding.where().layer())
          .put("feature", finding.where().featureId())
          .put("problem", finding.problem())
          .put("action", finding.action());
    }
    return JsonText.of(root);
  }

  private record Group(Finding.Level level, FindingCode code) {}

  private Map<Group, List<Finding>> byCode() {
    Map<Group, List<Finding>> groups =
        new TreeMap<>(Comparator.comparing(Group::level).thenComparing(Group::code));
    for (Finding finding : findings) {
      groups
          .computeIfAbsent(new Group(finding.level(), finding.code()), k -> new ArrayList<>())
          .add(finding);
    }
    return groups;
  }

  private String totals() {
    if (findings.isEmpty()) {
      return "no findings";
    }
    return counted(Finding.Level.ERROR, "error")
        + ", "
        + counted(Finding.Level.WARNING, "warning")
        + ", "
        + counted(Finding.Level.NOTE, "note");
  }

  private String counted(Finding.Level level, String noun) {
    long count = count(level);
    return count + " " + noun + (count == 1 ? "" : "s");
  }

  private static String oneLine(Finding finding) {
    return finding.message().replaceAll("\\R+", " ");
  }

  private static String lower(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
