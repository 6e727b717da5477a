package org.meadowmark.core.survey;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.meadowmark.core.model.MeadowmarkException;

/**
 * Units that a width or depth attribute may have.
 *
 * <p>Source: the international foot is 0.3048 m exactly and the US survey foot 1200/3937 m exactly
 * (National Bureau of Standards, 1959, <i>Refinement of values for the yard and the pound</i>, 24
 * FR 5348).
 */
public enum LengthUnit {
  /** The metre. */
  METRE("m", 1),
  /** The centimetre, 0.01 m. */
  CENTIMETRE("cm", 0.01),
  /** The millimetre, 0.001 m. */
  MILLIMETRE("mm", 0.001),
  /** The international inch, 0.0254 m. */
  INCH("in", 0.0254),
  /** The international foot, 0.3048 m. */
  FOOT("ft", 0.3048),
  /** The foot of land surveys in the United States, 1200/3937 m. */
  US_SURVEY_FOOT("us-ft", 1200.0 / 3937.0);

  private final String key;
  private final double metres;

  LengthUnit(String key, double metres) {
    this.key = key;
    this.metres = metres;
  }

  /** {@return name used in a survey file} */
  public String key() {
    return key;
  }

  /**
   * {@return a length in this unit, in metres}
   *
   * @param length the length in this unit
   */
  public double toMetres(double length) {
    return length * metres;
  }

  /**
   * {@return the unit of a name in a survey file, whatever the case and the blanks around it}
   *
   * @param key name of a unit, such as {@code us-ft}
   * @throws MeadowmarkException if no unit has that name
   */
  public static LengthUnit ofKey(String key) {
    for (LengthUnit unit : values()) {
      if (unit.key.equals(key.strip().toLowerCase(Locale.ROOT))) {
        return unit;
      }
    }
    String known = Arrays.stream(values()).map(LengthUnit::key).collect(Collectors.joining(", "));
    throw new MeadowmarkException("unknown unit of length '" + key + "'; use one of: " + known);
  }
}
