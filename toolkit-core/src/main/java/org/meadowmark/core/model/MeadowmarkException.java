package org.meadowmark.core.model;

/**
 * Root of the toolkit's own exceptions: a one-line message that says what to do. Control characters
 * in it become blanks, and a very long message is cut, since a message may quote a file.
 */
public class MeadowmarkException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private static final int LONGEST_MESSAGE = 2_000;

  /**
   * Creates the exception.
   *
   * @param message what is wrong; what to do
   */
  public MeadowmarkException(String message) {
    super(PlainText.line(message, LONGEST_MESSAGE));
  }

  /**
   * Creates the exception.
   *
   * @param message what is wrong; what to do
   * @param cause the failure below
   */
  public MeadowmarkException(String message, Throwable cause) {
    super(PlainText.line(message, LONGEST_MESSAGE), cause);
  }
}
