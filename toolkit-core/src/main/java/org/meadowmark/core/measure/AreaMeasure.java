package org.meadowmark.core.measure;

import java.util.List;
import java.util.Optional;
import org.meadowmark.core.model.MapArea;

/**
 * A management area, the beds outside all of them, or the whole survey.
 *
 * @param kind which of the three
 * @param area the management area, where it is one
 * @param bedCount beds that have grass in it
 * @param damage damage of the beds in it
 * @param fragmentation pieces of the beds in it, touching beds joined
 * @param byClass mapped grass by texture or species, see {@link GrassClass}, in key order
 * @param bySeverity mapped grass by the severity class of its bed, see {@link SeverityGrass},
 *     lightest class first; the areas add up to the mapped bed area
 */
public record AreaMeasure(
    Kind kind,
    Optional<MapArea> area,
    int bedCount,
    Damage damage,
    Fragmentation fragmentation,
    List<GrassClass> byClass,
    List<SeverityGrass> bySeverity) {

  /** What a line of area results is about. */
  public enum Kind {
    /** Grass of all beds inside one management area, each bed cut at its outline. */
    MANAGEMENT_AREA,
    /** Grass that lies in no management area. */
    OUTSIDE_MANAGEMENT_AREAS,
    /** Grass of all beds. */
    WHOLE_SURVEY
  }

  /**
   * Grass of one species and texture.
   *
   * @param species species key, or empty
   * @param texture texture, or empty
   * @param grassSquareMetres mapped bed area
   * @param scarredSquareMetres scarred area
   */
  public record GrassClass(
      String species, String texture, double grassSquareMetres, double scarredSquareMetres) {}

  /**
   * Grass in beds of one severity class.
   *
   * @param severityKey key of the class of the bed as a whole; {@code unknown} for grass outside
   *     the surveyed area, also where the rest of its bed was surveyed
   * @param grassSquareMetres mapped bed area of that class inside this area
   */
  public record SeverityGrass(String severityKey, double grassSquareMetres) {}

  /**
   * Keeps copies of the lists that cannot be changed.
   *
   * @param kind which of the three
   * @param area the management area, where it is one
   * @param bedCount beds that have grass in it
   * @param damage damage of the beds in it
   * @param fragmentation pieces of the beds in it, touching beds joined
   * @param byClass mapped grass by texture or species, see {@link GrassClass}, in key order
   * @param bySeverity mapped grass by the severity class of its bed, see {@link SeverityGrass},
   *     lightest class first; the areas add up to the mapped bed area
   * @throws NullPointerException if a list or an entry of one is null
   */
  public AreaMeasure {
    byClass = List.copyOf(byClass);
    bySeverity = List.copyOf(bySeverity);
  }

  /** {@return name for people} */
  public String label() {
    return switch (kind) {
      case MANAGEMENT_AREA -> area.orElseThrow().label();
      case OUTSIDE_MANAGEMENT_AREAS -> "outside every management area";
      case WHOLE_SURVEY -> "whole survey";
    };
  }
}
