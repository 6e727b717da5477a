package org.meadowmark.core.model;

/** The output cannot be written: no space, no permission, no such place. */
public final class OutputFailedException extends MeadowmarkException {
  private static final long serialVersionUID = 1L;

  /**
   * Creates the exception.
   *
   * @param message what cannot be written; what to do
   */
  public OutputFailedException(String message) {
    super(message);
  }

  /**
   * Creates the exception.
   *
   * @param message what cannot be written; what to do
   * @param cause the failure below
   */
  public OutputFailedException(String message, Throwable cause) {
    super(message, cause);
  }
}
