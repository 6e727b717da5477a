package org.meadowmark.core.plan;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.meadowmark.core.measure.recovery.Discounting;
import org.meadowmark.core.measure.recovery.Estimate;
import org.meadowmark.core.measure.recovery.LossConventions;
import org.meadowmark.core.measure.recovery.Planting;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.measure.recovery.ScarRegrowth;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.model.Range;

/**
 * What planting in a later season still gains, by the conventions of the loss: service that comes
 * later counts less, and the scar has closed in part by itself.
 *
 * <p>The first season is the base year, as for the figures of each scar; each later season is a
 * year after the one before.
 */
final class LaterGains {
  private final LossConventions conventions;
  private final Planting planting;
  private final Map<String, ScarRecovery> recoveries = new HashMap<>();

  LaterGains(LossConventions conventions, Planting planting, List<ScarRecovery> recoveries) {
    this.conventions = conventions;
    this.planting = planting;
    recoveries.forEach(recovery -> this.recoveries.put(recovery.scarId(), recovery));
  }

  /** Discounted service-hectare-years gained, middle estimate; 0 where no forecast is known. */
  double grass(RepairScar scar, int yearsLater) {
    double now = Math.max(0, scar.gain().map(Range::middle).orElse(0.0));
    ScarRecovery recovery = recoveries.get(scar.scarId());
    if (yearsLater == 0 || recovery == null || recovery.regrowth().isEmpty()) {
      return now * share(yearsLater);
    }
    ScarRegrowth regrowth = recovery.regrowth().get();
    double hectares = recovery.areaInBedsSquareMetres() / Hectare.SQUARE_METRES;
    double planted =
        regrowth
            .course(Estimate.MIDDLE, conventions.horizonYears(), planting, yearsLater)
            .serviceHectareYears(hectares, conventions.discounting());
    return Math.max(0, recovery.alone().get().lossServiceHectareYears().middle() - planted);
  }

  /** What a service of the same size is worth so many years later: (1 + r)^−years. */
  double share(int yearsLater) {
    Discounting discounting = conventions.discounting();
    return discounting.factor(yearsLater) / discounting.factor(0);
  }
}
