package org.meadowmark.core.survey;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Choices that change results. Defaults, limits and sources are rows of {@code parameters.csv}.
 *
 * @param analysisCrs reference system to measure in, {@code EPSG:n}; empty takes the best UTM zone
 * @param groundScale whether grid lengths and areas are corrected to the ground
 * @param severityDenominator what a scarred area is divided by to get a bed's severity class
 * @param scarGroupDistanceMetres scars at most this far apart are one group
 * @param crossingDistancesMetres gaps that an animal can cross, ascending, for the sweep
 * @param crossingDistanceMetres the one crossing distance that headline figures use
 * @param fishGuild key of the fish guild that this distance was taken from; empty where it was
 *     given, or is the default
 * @param gapWidthLimitsMetres limits between the classes that gap widths are counted in, ascending
 * @param sliverToleranceMetres beds closer than this touch
 * @param minimumPatchSquareMetres smaller pieces of grass are crumbs, not patches
 * @param minimumWidthMetres narrower scars are questioned
 * @param maximumWidthMetres wider scars are questioned
 * @param segmentLengthMetres nominal length of a channel segment
 * @param channelReachMetres scars farther from every channel are not attributed
 * @param minimumExposureHectares segments with less bed in reach get no rate
 * @param attributionStepMetres longest piece of a scar whose nearest segment is looked up at once
 * @param pixelSizeMetres ground size of a pixel of the imagery that was mapped from, where known
 * @param uncertaintyDraws draws of widths and positions for intervals of the damage; 0 for none
 * @param seed seed of everything that is drawn
 * @param positionRmseMetres radial root mean square error of scar positions, where stated
 * @param positionRmseXMetres that in easting, where it is stated by axis
 * @param positionRmseYMetres that in northing, likewise
 * @param positionCheckPoints check points that this error was taken from, where stated
 * @param connectivityDetailPatches most patches of a survey for which the importance of each patch
 *     and the filling of each scar are worked out
 * @param connectivityExactPatches most patches of a scope for which connectivity is exact
 * @param connectivitySources patches that it is estimated from beyond that
 * @param ranking choices for the evidence of channel segments and their ranking
 * @param zones choices for zones to mark
 * @param recovery choices for recovery, loss and planted grass
 * @param repair choices for the repair plan
 * @param matching choices for matching scars of two surveys
 * @param comparison choices for rates, markers and what makes surveys comparable
 */
public record Parameters(
    Optional<String> analysisCrs,
    boolean groundScale,
    SeverityDenominator severityDenominator,
    double scarGroupDistanceMetres,
    List<Double> crossingDistancesMetres,
    double crossingDistanceMetres,
    Optional<String> fishGuild,
    List<Double> gapWidthLimitsMetres,
    double sliverToleranceMetres,
    double minimumPatchSquareMetres,
    double minimumWidthMetres,
    double maximumWidthMetres,
    double segmentLengthMetres,
    double channelReachMetres,
    double minimumExposureHectares,
    double attributionStepMetres,
    OptionalDouble pixelSizeMetres,
    int uncertaintyDraws,
    long seed,
    OptionalDouble positionRmseMetres,
    OptionalDouble positionRmseXMetres,
    OptionalDouble positionRmseYMetres,
    OptionalDouble positionCheckPoints,
    int connectivityDetailPatches,
    int connectivityExactPatches,
    int connectivitySources,
    RankingParameters ranking,
    ZoneParameters zones,
    RecoveryParameters recovery,
    RepairParameters repair,
    MatchingParameters matching,
    ComparisonParameters comparison) {

  /** What the scarred area is divided by. */
  public enum SeverityDenominator {
    /** The surveyed area of the bed. */
    BED("bed"),
    /** The area inside the outlines drawn around groups of scars. */
    SCAR_GROUP("scar-group");

    private final String key;

    SeverityDenominator(String key) {
      this.key = key;
    }

    /** {@return name used in a survey file and printed with every class} */
    public String key() {
      return key;
    }
  }

  /**
   * Sorts crossing distances and limits of gap widths, and leaves out those given twice.
   *
   * @param analysisCrs reference system to measure in, {@code EPSG:n}; empty takes the best UTM
   *     zone
   * @param groundScale whether grid lengths and areas are corrected to the ground
   * @param severityDenominator what a scarred area is divided by to get a bed's severity class
   * @param scarGroupDistanceMetres scars at most this far apart are one group
   * @param crossingDistancesMetres gaps that an animal can cross, ascending, for the sweep
   * @param crossingDistanceMetres the one crossing distance that headline figures use
   * @param fishGuild key of the fish guild that this distance was taken from; empty where it was
   *     given, or is the default
   * @param gapWidthLimitsMetres limits between the classes that gap widths are counted in,
   *     ascending
   * @param sliverToleranceMetres beds closer than this touch
   * @param minimumPatchSquareMetres smaller pieces of grass are crumbs, not patches
   * @param minimumWidthMetres narrower scars are questioned
   * @param maximumWidthMetres wider scars are questioned
   * @param segmentLengthMetres nominal length of a channel segment
   * @param channelReachMetres scars farther from every channel are not attributed
   * @param minimumExposureHectares segments with less bed in reach get no rate
   * @param attributionStepMetres longest piece of a scar whose nearest segment is looked up at once
   * @param pixelSizeMetres ground size of a pixel of the imagery that was mapped from, where known
   * @param uncertaintyDraws draws of widths and positions for intervals of the damage; 0 for none
   * @param seed seed of everything that is drawn
   * @param positionRmseMetres radial root mean square error of scar positions, where stated
   * @param positionRmseXMetres that in easting, where it is stated by axis
   * @param positionRmseYMetres that in northing, likewise
   * @param positionCheckPoints check points that this error was taken from, where stated
   * @param connectivityDetailPatches most patches of a survey for which the importance of each
   *     patch and the filling of each scar are worked out
   * @param connectivityExactPatches most patches of a scope for which connectivity is exact
   * @param connectivitySources patches that it is estimated from beyond that
   * @param ranking choices for the evidence of channel segments and their ranking
   * @param zones choices for zones to mark
   * @param recovery choices for recovery, loss and planted grass
   * @param repair choices for the repair plan
   * @param matching choices for matching scars of two surveys
   * @param comparison choices for rates, markers and what makes surveys comparable
   * @throws NullPointerException if one of the two lists is null
   */
  public Parameters {
    crossingDistancesMetres = crossingDistancesMetres.stream().sorted().distinct().toList();
    gapWidthLimitsMetres = gapWidthLimitsMetres.stream().sorted().distinct().toList();
  }

  /**
   * {@return the same choices, measured on a stated grid}
   *
   * @param code {@code EPSG:n} of a projected system
   */
  public Parameters onGrid(String code) {
    return with(Optional.of(code), uncertaintyDraws, connectivityDetailPatches);
  }

  /**
   * {@return the same choices without what takes longest: drawn intervals, and patches weighed one
   * by one}
   */
  public Parameters withoutDetail() {
    return with(analysisCrs, 0, 0);
  }

  private Parameters with(Optional<String> crs, int draws, int detailPatches) {
    return new Parameters(
        crs,
        groundScale,
        severityDenominator,
        scarGroupDistanceMetres,
        crossingDistancesMetres,
        crossingDistanceMetres,
        fishGuild,
        gapWidthLimitsMetres,
        sliverToleranceMetres,
        minimumPatchSquareMetres,
        minimumWidthMetres,
        maximumWidthMetres,
        segmentLengthMetres,
        channelReachMetres,
        minimumExposureHectares,
        attributionStepMetres,
        pixelSizeMetres,
        draws,
        seed,
        positionRmseMetres,
        positionRmseXMetres,
        positionRmseYMetres,
        positionCheckPoints,
        detailPatches,
        connectivityExactPatches,
        connectivitySources,
        ranking,
        zones,
        recovery,
        repair,
        matching,
        comparison);
  }

  /** {@return error of scar positions, where it is stated} */
  public Optional<PositionalAccuracy> position() {
    if (positionRmseXMetres.isPresent() && positionRmseYMetres.isPresent()) {
      return Optional.of(
          new PositionalAccuracy(
              positionRmseXMetres.getAsDouble(), positionRmseYMetres.getAsDouble()));
    }
    return positionRmseMetres.stream().mapToObj(PositionalAccuracy::ofRadialRmse).findFirst();
  }

  /**
   * {@return every crossing distance that results are given for, ascending: the sweep and the
   * headline}
   */
  public List<Double> allCrossingDistancesMetres() {
    return Stream.concat(crossingDistancesMetres.stream(), Stream.of(crossingDistanceMetres))
        .sorted()
        .distinct()
        .toList();
  }
}
