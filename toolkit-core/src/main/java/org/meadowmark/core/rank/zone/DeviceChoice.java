package org.meadowmark.core.rank.zone;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.meadowmark.core.reference.DeviceRule;
import org.meadowmark.core.survey.ZoneParameters;

/**
 * Devices by rule: a rule holds where its cause, and its pattern if it names one, has at least the
 * share of the zone's scar length that the parameters ask for. A pattern is known for all causes
 * together, so its share counts for a cause no more than the cause's own.
 */
final class DeviceChoice {
  private final List<DeviceRule> rules;
  private final ZoneParameters parameters;

  DeviceChoice(List<DeviceRule> rules, ZoneParameters parameters) {
    this.rules = rules;
    this.parameters = parameters;
  }

  /**
   * Proposals, largest share first; rules of one share in the order of the table.
   *
   * @param byCause scar metres by cause
   * @param byPattern scar metres by pattern
   * @param scarMetres all scar metres of the zone
   */
  List<DeviceProposal> proposals(
      Map<String, Double> byCause, Map<String, Double> byPattern, double scarMetres) {
    List<DeviceProposal> proposals = new ArrayList<>();
    for (DeviceRule rule : rules) {
      double metres = byCause.getOrDefault(rule.causeKey(), 0.0);
      if (!rule.pattern().equals(DeviceRule.ANY_PATTERN)) {
        metres = Math.min(metres, byPattern.getOrDefault(rule.pattern(), 0.0));
      }
      double share = scarMetres > 0 ? metres / scarMetres : 0;
      if (share > 0 && share >= parameters.deviceShare()) {
        proposals.add(proposal(rule, share));
      }
    }
    proposals.sort(Comparator.comparingDouble(proposal -> -proposal.share()));
    return proposals;
  }

  private DeviceProposal proposal(DeviceRule rule, double share) {
    MarkShape shape = MarkShape.ofKey(rule.shapeKey());
    String basis =
        shape.isRegulatory()
            ? parameters.legalBasis().orElse(DeviceProposal.LEGAL_BASIS_MISSING)
            : DeviceProposal.LEGAL_BASIS_NOT_NEEDED;
    return new DeviceProposal(
        rule.causeKey(),
        rule.pattern(),
        share,
        rule.device(),
        shape,
        rule.reason(),
        basis,
        rule.source());
  }
}
