package org.meadowmark.core.model;

/** Root of the toolkit's own exceptions: a one-line message that says what to do. */
public class MeadowmarkException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * Creates the exception.
   *
   * @param message what is wrong; what to do
   */
  public MeadowmarkException(String message) {
    super(message);
  }

  /**
   * Creates the exception.
   *
   * @param message what is wrong; what to do
   * @param cause the failure below
   */
  public MeadowmarkException(String message, Throwable cause) {
    super(message, cause);
  }
}
