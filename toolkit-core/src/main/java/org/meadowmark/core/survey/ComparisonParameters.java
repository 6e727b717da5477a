package org.meadowmark.core.survey;

import java.util.List;

/**
 * Choices for comparing seasons. Defaults, limits and sources are rows of {@code parameters.csv}.
 *
 * @param confidence share of intervals that are to hold the truth
 * @param bootstrapDraws draws of beds for intervals of sums over beds; 0 for none
 * @param widthClassLimitsMetres limits between classes of scar width, ascending
 * @param exposure what new scar metres beside a marker are divided by
 * @param mostPermutations arrangements of the marks that are counted
 * @param controlRateFactor how far a control's rate before may be from that of the marked segments
 * @param controlDistanceMetres distance along the channels from marked segments to controls
 * @param controlMinimumExposureHectares segments with less bed in reach take no part
 * @param detectableDrop drop of the rate that power is worked out for, in 0–1
 * @param detectionPower chance of detecting it that is asked for, in 0–1
 * @param mostFurtherSeasons further seasons that are looked ahead
 * @param unsafeSeasonDays surveys farther apart within the year are not comparable
 * @param unsafeEffortRatio surveys with more different effort are not comparable
 * @param unsafeClarityRatio surveys in more different water are not comparable
 * @param unsafePixelRatio surveys of more different resolution are not comparable
 * @param unsafePositionMetres surveys with a larger combined error at 95 % are not comparable
 * @param unsafeCommonShare surveys with a smaller share of bed in common are not comparable
 */
public record ComparisonParameters(
    double confidence,
    int bootstrapDraws,
    List<Double> widthClassLimitsMetres,
    ExposureBasis exposure,
    int mostPermutations,
    double controlRateFactor,
    double controlDistanceMetres,
    double controlMinimumExposureHectares,
    double detectableDrop,
    double detectionPower,
    int mostFurtherSeasons,
    double unsafeSeasonDays,
    double unsafeEffortRatio,
    double unsafeClarityRatio,
    double unsafePixelRatio,
    double unsafePositionMetres,
    double unsafeCommonShare) {
  /**
   * Sorts the limits between classes of width and leaves out those given twice.
   *
   * @param confidence share of intervals that are to hold the truth
   * @param bootstrapDraws draws of beds for intervals of sums over beds; 0 for none
   * @param widthClassLimitsMetres limits between classes of scar width, ascending
   * @param exposure what new scar metres beside a marker are divided by
   * @param mostPermutations arrangements of the marks that are counted
   * @param controlRateFactor how far a control's rate before may be from that of the marked
   *     segments
   * @param controlDistanceMetres distance along the channels from marked segments to controls
   * @param controlMinimumExposureHectares segments with less bed in reach take no part
   * @param detectableDrop drop of the rate that power is worked out for, in 0–1
   * @param detectionPower chance of detecting it that is asked for, in 0–1
   * @param mostFurtherSeasons further seasons that are looked ahead
   * @param unsafeSeasonDays surveys farther apart within the year are not comparable
   * @param unsafeEffortRatio surveys with more different effort are not comparable
   * @param unsafeClarityRatio surveys in more different water are not comparable
   * @param unsafePixelRatio surveys of more different resolution are not comparable
   * @param unsafePositionMetres surveys with a larger combined error at 95 % are not comparable
   * @param unsafeCommonShare surveys with a smaller share of bed in common are not comparable
   * @throws NullPointerException if there is no list of limits
   */
  public ComparisonParameters {
    widthClassLimitsMetres = widthClassLimitsMetres.stream().sorted().distinct().toList();
  }
}
