package org.meadowmark.core.survey;

/** A property of a feature that an attribute of the layer can be mapped to. */
public enum Field {
  ID("id"),
  NAME("name"),
  CAUSE("cause"),
  WIDTH("width"),
  DATE("date"),
  SPECIES("species"),
  TEXTURE("texture"),
  DEPTH("depth"),
  EXCAVATION("excavation"),
  MUCK("muck"),
  GRAZED("grazed"),
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
