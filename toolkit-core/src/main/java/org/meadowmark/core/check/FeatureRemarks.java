package org.meadowmark.core.check;

import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;

/** Lists what is found in one feature and remembers whether it was repaired. */
final class FeatureRemarks {
  private final FindingLog log;
  private final LayerRole role;
  private final FeatureRef where;
  private boolean repaired;

  FeatureRemarks(FindingLog log, LayerRole role, FeatureRef where) {
    this.log = log;
    this.role = role;
    this.where = where;
  }

  void note(FindingCode code, String problem, String action) {
    add(code, Finding.Level.NOTE, Finding.Treatment.KEPT, problem, action);
  }

  void kept(FindingCode code, String problem, String action) {
    add(code, Finding.Level.WARNING, Finding.Treatment.KEPT, problem, action);
  }

  void repaired(FindingCode code, String problem, String action) {
    repaired = true;
    add(code, Finding.Level.WARNING, Finding.Treatment.REPAIRED, problem, action);
  }

  void skipped(FindingCode code, String problem, String action) {
    add(code, Finding.Level.WARNING, Finding.Treatment.SKIPPED, problem, action);
  }

  boolean isRepaired() {
    return repaired;
  }

  private void add(
      FindingCode code,
      Finding.Level level,
      Finding.Treatment treatment,
      String problem,
      String action) {
    log.add(new Finding(code, level, treatment, role, where, problem, action));
  }
}
