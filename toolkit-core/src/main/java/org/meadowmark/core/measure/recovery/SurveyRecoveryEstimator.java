package org.meadowmark.core.measure.recovery;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.BedMeasure;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.Measurement.ScarredGrass;
import org.meadowmark.core.measure.ScarInBed;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.model.Hectare;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.RecoveryParameters;

/**
 * Recovery and loss of a measured survey.
 *
 * <p>The whole footprint of a scar closes from its edges by the edge rate of the bed that most of
 * it lies in; the share still bare counts as lost service on the part of the footprint inside beds.
 * Every scar is taken as fresh at the start of the base year. A bed's loss is that of its scars'
 * parts in it, times its scarred area over the sum of those parts, so that overlaps count once; an
 * area's is that of its beds by the share of their scarred grass in it.
 *
 * <p>Scars run in parallel; time is linear in scars, and the overlays of scarred grass with
 * management areas come on top.
 */
public final class SurveyRecoveryEstimator {
  private static final int SCARS_AT_ONCE = 5_000;

  private final Parameters parameters;
  private final EdgeRates rates;
  private final LossConventions conventions;
  private final Planting planting;
  private final Progress progress;

  /**
   * Prepares for surveys with the same choices.
   *
   * @param parameters choices of the user: rates where none is published, planting, discounting
   * @param tables published times in which scars closed, by species
   * @param surveyYear calendar year of the survey, where known
   * @param progress hears how far the work is
   */
  public SurveyRecoveryEstimator(
      Parameters parameters, ReferenceTables tables, OptionalInt surveyYear, Progress progress) {
    RecoveryParameters recovery = parameters.recovery();
    this.parameters = parameters;
    this.rates = new EdgeRates(tables, recovery);
    this.conventions = LossConventions.of(parameters, surveyYear);
    this.planting = Planting.of(recovery);
    this.progress = progress;
  }

  /** One scar with the courses that sums are made of. */
  private record Worked(ScarRecovery recovery, List<Courses> courses) {}

  private record Courses(Estimate estimate, ServiceCourse alone, ServiceCourse planted) {}

  /**
   * {@return recovery and loss of every scar, bed and area of a measured survey}
   *
   * @param measurement scars, their parts in beds, beds and areas
   */
  public SurveyRecovery estimate(Measurement measurement) {
    Map<String, BedMeasure> beds = new HashMap<>();
    measurement.beds().forEach(bed -> beds.put(bed.bed().id(), bed));
    Map<String, List<ScarInBed>> partsOfScar = new HashMap<>();
    measurement
        .scarsInBeds()
        .forEach(
            part -> partsOfScar.computeIfAbsent(part.scarId(), id -> new ArrayList<>(1)).add(part));

    Map<String, List<ScarInBed>> partsOfBed = new HashMap<>();
    measurement
        .scarsInBeds()
        .forEach(
            part -> partsOfBed.computeIfAbsent(part.bedId(), id -> new ArrayList<>()).add(part));
    Map<String, Double> onceOfBed = new HashMap<>();
    measurement
        .beds()
        .forEach(bed -> onceOfBed.put(bed.bed().id(), once(bed, partsOf(partsOfBed, bed))));

    List<ScarMeasure> measures = measurement.scars();
    List<ScarRecovery> scars = new ArrayList<>(measures.size());
    WorkedLoss.Sums alone = new WorkedLoss.Sums();
    WorkedLoss.Sums planted = new WorkedLoss.Sums();
    progress.begin("Forecasting recovery", measures.size());
    for (int start = 0; start < measures.size(); start += SCARS_AT_ONCE) {
      // Courses take room, so they are summed and dropped; in order, so that sums stay the same.
      for (Worked scar : worked(measures, start, partsOfScar, beds)) {
        scars.add(scar.recovery());
        double hectares = 0;
        for (ScarInBed part : partsOfScar.getOrDefault(scar.recovery().scarId(), List.of())) {
          hectares +=
              onceOfBed.get(part.bedId()) * part.footprintSquareMetres() / Hectare.SQUARE_METRES;
        }
        for (Courses each : scar.courses()) {
          alone.add(each.estimate(), each.alone(), hectares);
          planted.add(each.estimate(), each.planted(), hectares);
        }
      }
    }
    progress.end();

    Map<String, ScarRecovery> byId = new HashMap<>();
    scars.forEach(scar -> byId.put(scar.scarId(), scar));
    List<BedLoss> bedLosses =
        measurement.beds().stream()
            .map(bed -> bed(bed, onceOfBed.get(bed.bed().id()), partsOf(partsOfBed, bed), byId))
            .toList();
    double hectares =
        bedLosses.stream().mapToDouble(BedLoss::forecastSquareMetres).sum() / Hectare.SQUARE_METRES;
    return new SurveyRecovery(
        conventions,
        planting,
        scars,
        bedLosses,
        areas(measurement, bedLosses),
        new WorkedLoss(hectares, alone.shares(hectares), planted.shares(hectares)));
  }

  private List<Worked> worked(
      List<ScarMeasure> measures,
      int start,
      Map<String, List<ScarInBed>> partsOfScar,
      Map<String, BedMeasure> beds) {
    return measures
        .subList(start, Math.min(measures.size(), start + SCARS_AT_ONCE))
        .parallelStream()
        .map(
            scar -> {
              Worked worked =
                  scar(scar, partsOfScar.getOrDefault(scar.scar().id(), List.of()), beds);
              progress.advance(1);
              return worked;
            })
        .toList();
  }

  private static List<ScarInBed> partsOf(Map<String, List<ScarInBed>> partsOfBed, BedMeasure bed) {
    return partsOfBed.getOrDefault(bed.bed().id(), List.of());
  }

  /** Factor that makes overlaps count once. */
  private static double once(BedMeasure bed, List<ScarInBed> parts) {
    double sum = parts.stream().mapToDouble(ScarInBed::footprintSquareMetres).sum();
    return sum > 0 ? bed.damage().scarredSquareMetres() / sum : 0;
  }

  private Worked scar(ScarMeasure measure, List<ScarInBed> parts, Map<String, BedMeasure> beds) {
    String id = measure.scar().id();
    Optional<ScarInBed> most =
        parts.stream()
            .max(
                Comparator.comparingDouble(ScarInBed::lengthMetres)
                    .thenComparingDouble(ScarInBed::footprintSquareMetres)
                    .thenComparing(ScarInBed::bedId, Ids.ORDER.reversed()));
    if (most.isEmpty()) {
      return unknown(measure, "", "", "lies in no surveyed bed, so no grass grows back");
    }
    String bedId = most.get().bedId();
    String species = beds.get(bedId).bed().species();
    EdgeRate rate = rates.of(species);
    if (rate.metresPerYear().isEmpty()) {
      return unknown(measure, bedId, species, rate.basis());
    }
    var dug = measure.scar().excavationMetres();
    double doubling = parameters.recovery().excavationDoublingMetres();
    ScarRegrowth regrowth =
        new ScarRegrowth(
            ScarShapes.of(measure),
            rate.metresPerYear().get(),
            1 + (dug.isPresent() ? dug.getAsDouble() / doubling : 0));
    String basis =
        rate.basis()
            + (dug.isPresent() ? "" : "; depth of excavation not mapped, so it slows nothing");
    double hectares = measure.footprintInBedsSquareMetres() / Hectare.SQUARE_METRES;
    List<Courses> courses = new ArrayList<>();
    for (Estimate estimate : Estimate.values()) {
      courses.add(
          new Courses(
              estimate,
              regrowth.course(estimate, conventions.horizonYears()),
              regrowth.course(estimate, conventions.horizonYears(), planting, 0)));
    }
    return new Worked(
        new ScarRecovery(
            id,
            bedId,
            species,
            measure.footprintInBedsSquareMetres(),
            dug,
            Optional.of(regrowth),
            basis,
            Optional.of(
                new Outlook(
                    regrowth.yearsToHalf(),
                    regrowth.yearsToFull(),
                    loss(courses, false, hectares))),
            Optional.of(
                new Outlook(
                    regrowth.yearsToHalf(planting, 0),
                    regrowth.yearsToFull(planting, 0),
                    loss(courses, true, hectares)))),
        courses);
  }

  private static Worked unknown(ScarMeasure measure, String bedId, String species, String reason) {
    return new Worked(
        new ScarRecovery(
            measure.scar().id(),
            bedId,
            species,
            measure.footprintInBedsSquareMetres(),
            measure.scar().excavationMetres(),
            Optional.empty(),
            reason,
            Optional.empty(),
            Optional.empty()),
        List.of());
  }

  private Range loss(List<Courses> courses, boolean planted, double hectares) {
    double[] losses =
        courses.stream()
            .map(each -> planted ? each.planted() : each.alone())
            .mapToDouble(course -> course.serviceHectareYears(hectares, conventions.discounting()))
            .toArray();
    return Range.around(losses[1], losses[0], losses[2]);
  }

  private static BedLoss bed(
      BedMeasure bed, double once, List<ScarInBed> parts, Map<String, ScarRecovery> scars) {
    double scarred = bed.damage().scarredSquareMetres();
    double forecast = 0;
    Range alone = Range.exactly(0);
    Range planted = Range.exactly(0);
    for (ScarInBed part : parts) {
      ScarRecovery scar = scars.get(part.scarId());
      if (scar.regrowth().isEmpty() || !(scar.areaInBedsSquareMetres() > 0)) {
        continue;
      }
      double square = once * part.footprintSquareMetres();
      double share = square / scar.areaInBedsSquareMetres();
      forecast += square;
      alone = alone.plus(scar.alone().get().lossServiceHectareYears().map(l -> l * share));
      planted = planted.plus(scar.planted().get().lossServiceHectareYears().map(l -> l * share));
    }
    boolean known = forecast > 0 || scarred == 0;
    return new BedLoss(
        bed.bed().id(),
        bed.bed().species(),
        scarred,
        forecast,
        known ? Optional.of(alone) : Optional.empty(),
        known ? Optional.of(planted) : Optional.empty());
  }

  private List<AreaLoss> areas(Measurement measurement, List<BedLoss> beds) {
    Map<String, List<ScarredGrass>> scarred = new HashMap<>();
    measurement
        .scarredGrass()
        .forEach(
            grass -> scarred.computeIfAbsent(grass.bedId(), id -> new ArrayList<>()).add(grass));
    List<Geometry> areas =
        measurement.areas().stream()
            .flatMap(area -> area.area().stream())
            .map(MapArea::geometry)
            .toList();
    return measurement.areas().parallelStream()
        .map(area -> area(area, shareIn(area, areas), beds, scarred))
        .toList();
  }

  private interface ShareIn {
    /** Share of a shape's area, in 0–1. */
    double of(Geometry shape);
  }

  private static ShareIn shareIn(AreaMeasure area, List<Geometry> areas) {
    boolean undivided = area.area().isEmpty() && areas.isEmpty();
    if (area.kind() == Kind.WHOLE_SURVEY || undivided) {
      return shape -> 1;
    }
    Geometry outline =
        area.area().map(MapArea::geometry).orElseGet(() -> UnaryUnionOp.union(areas));
    PreparedGeometry prepared = PreparedGeometryFactory.prepare(outline);
    ShareIn inside =
        shape -> {
          if (shape.getArea() == 0 || !prepared.intersects(shape)) {
            return 0;
          }
          return prepared.contains(shape)
              ? 1
              : OverlayNGRobust.overlay(shape, outline, OverlayNG.INTERSECTION).getArea()
                  / shape.getArea();
        };
    return area.kind() == Kind.MANAGEMENT_AREA ? inside : shape -> 1 - inside.of(shape);
  }

  /** Share of a bed's scarred grass; a bed with very many scars has it in several parts. */
  private static double share(List<ScarredGrass> parts, ShareIn shareIn) {
    if (parts.size() == 1) {
      return shareIn.of(parts.get(0).geometry());
    }
    double whole = parts.stream().mapToDouble(ScarredGrass::areaSquareMetres).sum();
    double inside =
        parts.stream()
            .mapToDouble(part -> part.areaSquareMetres() * shareIn.of(part.geometry()))
            .sum();
    return whole > 0 ? inside / whole : 0;
  }

  private AreaLoss area(
      AreaMeasure area,
      ShareIn shareIn,
      List<BedLoss> beds,
      Map<String, List<ScarredGrass>> scarredGrass) {
    double scarred = 0;
    double forecast = 0;
    Range alone = Range.exactly(0);
    Range planted = Range.exactly(0);
    for (BedLoss bed : beds) {
      double share = share(scarredGrass.getOrDefault(bed.bedId(), List.of()), shareIn);
      if (share > 0) {
        scarred += share * bed.scarredSquareMetres();
        forecast += share * bed.forecastSquareMetres();
        alone = alone.plus(bed.alone().orElse(Range.exactly(0)).map(loss -> loss * share));
        planted = planted.plus(bed.planted().orElse(Range.exactly(0)).map(loss -> loss * share));
      }
    }
    boolean known = forecast > 0 || scarred == 0;
    double gain = conventions.projectGainPerHectare();
    Range lost = alone;
    return new AreaLoss(
        area.kind(),
        area.area().map(MapArea::id).orElse(""),
        area.label(),
        scarred,
        forecast,
        known ? Optional.of(alone) : Optional.empty(),
        known ? Optional.of(planted) : Optional.empty(),
        known
            ? Optional.of(lost.map(loss -> ServiceCourse.compensatingHectares(loss, gain)))
            : Optional.empty());
  }
}
