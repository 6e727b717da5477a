package org.meadowmark.core.model;

/** Something stands where the output should go and may not be replaced. */
public final class OutputExistsException extends MeadowmarkException {
  private static final long serialVersionUID = 1L;

  /**
   * Creates the exception.
   *
   * @param message what stands there; what to do
   */
  public OutputExistsException(String message) {
    super(message);
  }
}
