package org.meadowmark.core.measure.uncertainty;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How sure the damage of a bed, an area or the whole survey is.
 *
 * @param draws number of draws
 * @param areaSquareMetres scarred area
 * @param share scarred area divided by surveyed area
 * @param classes share of draws in each severity class, lightest class first; they add up to 1
 * @param likeliestClass class that most draws fall in; of several the lightest
 * @param positionDrawn whether positions were drawn, or held because their accuracy is not stated
 * @param widthVarianceShare variance of the area from widths alone, divided by the sum of that and
 *     of the variance from positions alone; empty where positions are held or nothing varies
 * @param largerError the error that makes the area vary more; empty where nothing varies
 */
public record DamageInterval(
    int draws,
    Range areaSquareMetres,
    Range share,
    List<ClassShare> classes,
    String likeliestClass,
    boolean positionDrawn,
    OptionalDouble widthVarianceShare,
    Optional<ErrorSource> largerError) {

  /**
   * Ninety of a hundred draws lie in it.
   *
   * @param low 5 % quantile
   * @param median middle of the draws
   * @param high 95 % quantile
   */
  public record Range(double low, double median, double high) {}

  /**
   * Draws in a severity class.
   *
   * @param severityKey key of the class
   * @param drawShare share of all draws (0–1)
   */
  public record ClassShare(String severityKey, double drawShare) {}

  /** Where an error comes from. */
  public enum ErrorSource {
    /** Widths of scars, measured or taken from a table. */
    WIDTH("width"),
    /** Positions of scars. */
    POSITION("position");

    private final String key;

    ErrorSource(String key) {
      this.key = key;
    }

    /** {@return name used in results} */
    public String key() {
      return key;
    }
  }

  /**
   * Keeps a copy of the list that cannot be changed.
   *
   * @param draws number of draws
   * @param areaSquareMetres scarred area
   * @param share scarred area divided by surveyed area
   * @param classes share of draws in each severity class, lightest class first; they add up to 1
   * @param likeliestClass class that most draws fall in; of several the lightest
   * @param positionDrawn whether positions were drawn, or held because their accuracy is not stated
   * @param widthVarianceShare variance of the area from widths alone, divided by the sum of that
   *     and of the variance from positions alone; empty where positions are held or nothing varies
   * @param largerError the error that makes the area vary more; empty where nothing varies
   * @throws NullPointerException if the list or an entry of it is null
   */
  public DamageInterval {
    classes = List.copyOf(classes);
  }

  /**
   * {@return share of draws in a class (0–1)}
   *
   * @param severityKey key of the class; one that no draw fell in gives 0
   */
  public double drawShare(String severityKey) {
    return classes.stream()
        .filter(c -> c.severityKey().equals(severityKey))
        .mapToDouble(ClassShare::drawShare)
        .sum();
  }
}
