package org.meadowmark.core.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.impl.PackedCoordinateSequenceFactory;
import org.meadowmark.core.measure.ConnectivityDetail;
import org.meadowmark.core.measure.ScarFilling;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.measure.recovery.ScarRecovery;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.SiteNotes;
import org.meadowmark.core.plan.layout.PlantingLayout;
import org.meadowmark.core.survey.RepairParameters;

/** Works out what repairing each scar takes, costs and gains, and whether it is fit. */
final class ScarAssessor {
  private static final double PERCENT = 100;
  private static final GeometryFactory PACKED =
      new GeometryFactory(PackedCoordinateSequenceFactory.DOUBLE_FACTORY);

  private final RepairParameters choices;
  private final Range survival;
  private final PlantingLayout layout;
  private final RescarRisks risks;
  private final Map<String, ScarRecovery> recoveries = new HashMap<>();
  private final Map<String, SiteNotes> bedNotes = new HashMap<>();
  private final Map<String, Double> connectivity = new HashMap<>();
  private final boolean isConnectivityKnown;

  ScarAssessor(
      RepairParameters choices,
      Range survival,
      PlantingLayout layout,
      RescarRisks risks,
      List<ScarRecovery> recoveries,
      Optional<ConnectivityDetail> detail,
      List<Bed> beds) {
    this.choices = choices;
    this.survival = survival;
    this.layout = layout;
    this.risks = risks;
    beds.forEach(bed -> bedNotes.put(bed.id(), bed.notes()));
    recoveries.forEach(recovery -> this.recoveries.put(recovery.scarId(), recovery));
    this.isConnectivityKnown = detail.isPresent();
    detail.stream()
        .flatMap(known -> known.scars().stream())
        .forEach(filling -> connectivity.put(filling.scarId(), gain(filling)));
  }

  private static double gain(ScarFilling filling) {
    return Math.max(0, filling.equivalentAreaGainHectares());
  }

  RepairScar assess(ScarMeasure measure, String siteId) {
    String id = measure.scar().id();
    ScarRecovery recovery = recoveries.get(id);
    SiteNotes note = notes(measure, recovery);
    double area = measure.footprintInBedsSquareMetres();
    long units = layout.count(measure);
    OptionalDouble excavation = measure.scar().excavationMetres();
    OptionalDouble fill =
        excavation.isPresent()
            ? OptionalDouble.of(fillCubicMetres(area, excavation.getAsDouble()))
            : OptionalDouble.empty();
    Optional<Range> gain =
        Optional.ofNullable(recovery).flatMap(ScarRecovery::gainServiceHectareYears);
    OptionalDouble connected =
        isConnectivityKnown
            ? OptionalDouble.of(connectivity.getOrDefault(id, 0.0))
            : OptionalDouble.empty();
    RescarRisk risk = risks.of(id);
    double benefit =
        (choices.grassWeight() * Math.max(0, gain.map(Range::middle).orElse(0.0))
                + choices.connectivityWeight() * connected.orElse(0))
            * risk.staysWhole(choices.establishmentYears());
    List<String> unfit = unfit(measure, units, note);
    List<String> first = protectFirst(risk, note);
    return new RepairScar(
        packed(measure),
        siteId,
        recovery == null ? "" : recovery.species(),
        area,
        layout.rows(measure.scar()),
        units,
        survival.map(share -> share * units),
        excavation,
        fill,
        new RepairCost(
            units * choices.unitCost(),
            fill.orElse(0) * choices.fillCostPerCubicMetre(),
            choices.monitoringCost()),
        gain,
        recovery == null ? "no forecast of recovery" : recovery.basis(),
        connected,
        risk,
        benefit,
        fitness(unfit, first, benefit),
        reasons(unfit, first, benefit),
        unknowns(measure, note, risk, gain, connected));
  }

  /** Its geometry without an object a point: the plan holds every scar to the end. */
  private static ScarMeasure packed(ScarMeasure measure) {
    Scar scar = measure.scar();
    return measure.withScar(scar.withGeometry(PACKED.createGeometry(scar.geometry())));
  }

  /** A note on the scar stands above one on the bed that most of it lies in. */
  private SiteNotes notes(ScarMeasure measure, ScarRecovery recovery) {
    SiteNotes ofBed =
        recovery == null ? SiteNotes.NONE : bedNotes.getOrDefault(recovery.bedId(), SiteNotes.NONE);
    return measure.scar().notes().orElse(ofBed);
  }

  /** The trench is filled to grade. */
  private double fillCubicMetres(double areaSquareMetres, double excavationMetres) {
    return excavationMetres > choices.fillThresholdMetres()
        ? areaSquareMetres * excavationMetres
        : 0;
  }

  private List<String> unfit(ScarMeasure measure, long units, SiteNotes note) {
    List<String> reasons = new ArrayList<>();
    if (measure.footprintInBedsSquareMetres() <= 0) {
      reasons.add("it lies outside every surveyed bed");
    } else if (units == 0) {
      reasons.add("no planting unit falls inside a bed");
    }
    if (measure.depthMetres().isPresent()
        && choices.deepestMetres().isPresent()
        && measure.depthMetres().getAsDouble() > choices.deepestMetres().getAsDouble()) {
      reasons.add(
          String.format(
              Locale.ROOT,
              "too deep for light: %.2f m, deeper than %.2f m",
              measure.depthMetres().getAsDouble(),
              choices.deepestMetres().getAsDouble()));
    }
    return reasons;
  }

  private List<String> protectFirst(RescarRisk risk, SiteNotes note) {
    List<String> reasons = new ArrayList<>();
    if (note.isMuck().orElse(false)) {
      reasons.add("bare muck: clear it to firm sand first");
    }
    if (note.isGrazed().orElse(false)) {
      reasons.add("actively grazed (squared-off leaf tips): keep grazers out first");
    }
    if (note.isScarredAgain().orElse(false)) {
      reasons.add("the same line is scarred again and again: keep boats off it first");
    }
    double chance = risk.chancePerYear().orElse(0);
    if (chance > 0 && chance >= choices.protectFirstChance()) {
      reasons.add(
          String.format(
              Locale.ROOT,
              "scarred again with a chance of %.0f %% a year%s",
              PERCENT * chance,
              risk.isInZone()
                  ? String.format(
                      Locale.ROOT,
                      ", %.0f %% with the proposed marker",
                      PERCENT * risk.chanceWithMarker().orElse(chance))
                  : ""));
    }
    double again = risk.reScarredShare().orElse(0);
    if (again > 0 && again >= choices.protectFirstShare()) {
      reasons.add(
          String.format(
              Locale.ROOT,
              "%.0f %% of new scar length here lies on ground scarred in an earlier season",
              PERCENT * again));
    }
    return reasons;
  }

  private static Fitness fitness(List<String> unfit, List<String> first, double benefit) {
    if (!unfit.isEmpty()) {
      return Fitness.NOT_FIT;
    }
    if (!first.isEmpty()) {
      return Fitness.PROTECT_FIRST;
    }
    return benefit > 0 ? Fitness.PLANT : Fitness.NO_GAIN;
  }

  private static List<String> reasons(List<String> unfit, List<String> first, double benefit) {
    List<String> reasons = new ArrayList<>(unfit);
    reasons.addAll(first);
    if (reasons.isEmpty() && !(benefit > 0)) {
      reasons.add("nothing is known to be gained");
    }
    return reasons;
  }

  private List<String> unknowns(
      ScarMeasure measure,
      SiteNotes note,
      RescarRisk risk,
      Optional<Range> gain,
      OptionalDouble connected) {
    List<String> unknowns = new ArrayList<>();
    if (measure.scar().isLine() && !(measure.scar().widthMetres() > 0)) {
      unknowns.add("width");
    }
    if (measure.scar().excavationMetres().isEmpty()) {
      unknowns.add("excavation and fill");
    }
    if (measure.depthMetres().isEmpty()) {
      unknowns.add("water depth and light");
    } else if (choices.deepestMetres().isEmpty()) {
      unknowns.add("deepest place for grass");
    }
    if (note.isMuck().isEmpty()) {
      unknowns.add("bottom (sand or muck)");
    }
    if (note.isGrazed().isEmpty()) {
      unknowns.add("grazing");
    }
    if (gain.isEmpty()) {
      unknowns.add("gain in grass");
    }
    if (connected.isEmpty()) {
      unknowns.add("connectivity");
    }
    if (risk.ratePerYear().isEmpty()) {
      unknowns.add("chance of being scarred again");
    }
    if (risk.reScarredShare().isEmpty() && note.isScarredAgain().isEmpty()) {
      unknowns.add("scars of earlier seasons");
    }
    return unknowns;
  }
}
