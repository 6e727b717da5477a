package org.meadowmark.core.reference;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The reference tables, in file order.
 *
 * @param species plants by key
 * @param causes scar causes by key
 * @param severityClasses classes, lightest first
 * @param deviceRules marker rules
 * @param fishGuilds animals that cross gaps alike, by key
 * @param scarRecovery times that scars take to close, by key of the species; one without a
 *     published time has no row
 * @param rhizomeElongation growth of rhizomes by key
 */
public record ReferenceTables(
    Map<String, Species> species,
    Map<String, ScarCause> causes,
    List<SeverityClass> severityClasses,
    List<DeviceRule> deviceRules,
    Map<String, FishGuild> fishGuilds,
    Map<String, ScarRecoveryTime> scarRecovery,
    Map<String, RhizomeElongation> rhizomeElongation) {

  /** Key of the cause of a scar whose cause is missing or not in the table. */
  public static final String UNKNOWN_CAUSE = "unknown";

  /**
   * Tables without any time of recovery or growth of rhizomes.
   *
   * @param species plants by key
   * @param causes scar causes by key
   * @param severityClasses classes, lightest first
   * @param deviceRules marker rules
   * @param fishGuilds animals that cross gaps alike, by key
   */
  public ReferenceTables(
      Map<String, Species> species,
      Map<String, ScarCause> causes,
      List<SeverityClass> severityClasses,
      List<DeviceRule> deviceRules,
      Map<String, FishGuild> fishGuilds) {
    this(species, causes, severityClasses, deviceRules, fishGuilds, Map.of(), Map.of());
  }

  /**
   * {@return the class of a share between 0 and 1; empty where the share is not known}
   *
   * @param share scarred part of what it is held against, in 0–1; anything else, NaN too, is in no
   *     class
   */
  public Optional<SeverityClass> severityOf(double share) {
    return severityClasses.stream().filter(c -> c.contains(share)).findFirst();
  }
}
