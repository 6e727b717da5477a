package org.meadowmark.core.plan;

/**
 * What repairing one scar costs, without the mobilisation that it shares with others of its site.
 *
 * @param units planting
 * @param fill fill; 0 where the excavation is not known
 * @param monitoring following it up
 */
public record RepairCost(double units, double fill, double monitoring) {
  /** {@return all three} */
  public double total() {
    return units + fill + monitoring;
  }
}
