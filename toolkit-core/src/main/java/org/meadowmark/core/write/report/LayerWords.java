package org.meadowmark.core.write.report;

import java.util.OptionalDouble;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.reference.Species;
import org.meadowmark.core.write.Phrases;

/** Names and figures that the layers have in common. */
record LayerWords(ReferenceTables references, Phrases text) {
  private static final double PERCENT = 100;

  /** Common name of a species, or its key. */
  String species(String key) {
    Species known = references.species().get(key);
    return known == null ? key : known.commonName();
  }

  /** Name of a cause, or its key. */
  String cause(String key) {
    ScarCause known = references.causes().get(key);
    return known == null ? key : known.label();
  }

  /** Name of a severity class. */
  String severity(String key) {
    return references.severityClasses().stream()
        .filter(each -> each.key().equals(key))
        .map(SeverityClass::label)
        .findFirst()
        .orElse(text.get("unknown"));
  }

  /** Lower limit of the scarred share, in percent. */
  static OptionalDouble low(Damage damage) {
    return damage
        .interval()
        .map(interval -> OptionalDouble.of(PERCENT * interval.share().low()))
        .orElseGet(OptionalDouble::empty);
  }

  /** Upper limit of the scarred share, in percent. */
  static OptionalDouble high(Damage damage) {
    return damage
        .interval()
        .map(interval -> OptionalDouble.of(PERCENT * interval.share().high()))
        .orElseGet(OptionalDouble::empty);
  }

  /** A value that is only there where something holds. */
  static OptionalDouble known(boolean known, double value) {
    return known ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /** A share between 0 and 1 in percent. */
  static OptionalDouble percent(OptionalDouble share) {
    return share.isPresent()
        ? OptionalDouble.of(PERCENT * share.getAsDouble())
        : OptionalDouble.empty();
  }
}
