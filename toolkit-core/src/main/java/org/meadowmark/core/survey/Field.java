package org.meadowmark.core.survey;

/**
 * A property of a feature that an attribute of the layer can be mapped to. Lengths are in the
 * layer's unit of width, but in metres in an attribute that is not mapped and was found by its name
 * {@code width_m}, {@code depth_m} or {@code excavation_m}.
 */
public enum Field {
  /**
   * What a feature is called; it should be unique in the layer. Without it the format's own number
   * is taken.
   */
  ID("id"),
  /** Name of a channel or an area, for people. */
  NAME("name"),
  /** What made a scar, in a word of {@code scar-causes.csv} or one that the survey maps to it. */
  CAUSE("cause"),
  /** Width of a scar line on the ground, in the layer's unit of width. */
  WIDTH("width"),
  /** Day on which a scar was mapped. */
  DATE("date"),
  /** What grows in a bed, in a word of {@code species.csv} or one that the survey maps to it. */
  SPECIES("species"),
  /** The mapper's word for a bed's texture, such as patchy or continuous. */
  TEXTURE("texture"),
  /** Water depth at a point, positive downwards, in the layer's unit of width. */
  DEPTH("depth"),
  /** Depth of a scar's trench below the bottom around it, in the layer's unit of width. */
  EXCAVATION("excavation"),
  /** Whether the bottom is bare muck: yes or no. */
  MUCK("muck"),
  /** Whether leaf tips are squared off, the sign of grazing: yes or no. */
  GRAZED("grazed"),
  /** Whether boats keep scarring the same line: yes or no. */
  SCARRED_AGAIN("scarred_again");

  private final String key;

  Field(String key) {
    this.key = key;
  }

  /** {@return name used in a survey file} */
  public String key() {
    return key;
  }
}
