package org.meadowmark.core.check;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;

/**
 * Collects the findings of all stages.
 *
 * <p>Every finding is kept. Texts that repeat are stored once, so that a layer with the same fault
 * in each of a million features costs a reference and a location a feature. Safe for use by several
 * threads; the order of {@link #sorted} and {@link #counts} does not depend on the order of
 * arrival.
 */
public final class FindingLog {

  /**
   * How often something was found.
   *
   * @param role layer role
   * @param code what was found
   * @param level how bad it is
   * @param treatment what was done
   * @param count number of findings
   */
  public record Count(
      LayerRole role,
      FindingCode code,
      Finding.Level level,
      Finding.Treatment treatment,
      long count) {}

  private static final int MOST_SHARED_TEXTS = 10_000;

  private final List<Finding> findings = new ArrayList<>();
  private final Map<String, String> texts = new HashMap<>();
  private boolean errors;

  /**
   * Adds a finding.
   *
   * @param finding what was found; its texts may be exchanged for equal ones
   */
  public synchronized void add(Finding finding) {
    findings.add(
        new Finding(
            finding.code(),
            finding.level(),
            finding.treatment(),
            finding.role(),
            finding.where(),
            shared(finding.problem()),
            shared(finding.action())));
    errors |= finding.level() == Finding.Level.ERROR;
  }

  /**
   * Adds findings.
   *
   * @param more what was found, by any stage
   */
  public synchronized void addAll(Collection<Finding> more) {
    more.forEach(this::add);
  }

  /** {@return all findings in {@link Finding#ORDER}} */
  public synchronized List<Finding> sorted() {
    return findings.stream().sorted(Finding.ORDER).toList();
  }

  /**
   * {@return counts by role, code, level and treatment, in that order; kinds never found are left
   * out}
   */
  public synchronized List<Count> counts() {
    Map<Count, Long> byKind =
        new TreeMap<>(
            Comparator.comparing(Count::role)
                .thenComparing(Count::code)
                .thenComparing(Count::level)
                .thenComparing(Count::treatment));
    for (Finding finding : findings) {
      byKind.merge(
          new Count(finding.role(), finding.code(), finding.level(), finding.treatment(), 0),
          1L,
          Long::sum);
    }
    List<Count> counts = new ArrayList<>(byKind.size());
    byKind.forEach(
        (kind, n) ->
            counts.add(new Count(kind.role(), kind.code(), kind.level(), kind.treatment(), n)));
    return List.copyOf(counts);
  }

  /** {@return number of findings} */
  public synchronized int size() {
    return findings.size();
  }

  /** {@return whether any finding is an error: the assessment cannot run} */
  public synchronized boolean hasErrors() {
    return errors;
  }

  private String shared(String text) {
    if (texts.size() >= MOST_SHARED_TEXTS) {
      return texts.getOrDefault(text, text);
    }
    String known = texts.putIfAbsent(text, text);
    return known == null ? text : known;
  }
}
