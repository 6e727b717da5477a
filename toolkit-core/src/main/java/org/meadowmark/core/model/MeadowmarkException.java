package org.meadowmark.core.model;

/**
 * Root of the toolkit's own exceptions: a one-line message that says what to do. Control characters
 * in it become blanks, and a very long message loses its middle, since a message may quote a file.
 */
public class MeadowmarkException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private static final int LONGEST_START = 1_400;
  private static final int LONGEST_END = 500;

  /**
   * Creates the exception.
   *
   * @param message what is wrong; what to do
   */
  public MeadowmarkException(String message) {
    super(line(message));
  }

  /**
   * Creates the exception.
   *
   * @param message what is wrong; what to do
   * @param cause the failure below
   */
  public MeadowmarkException(String message, Throwable cause) {
    super(line(message), cause);
  }

  /** What to do stands at the end of a message, so that the end is kept. */
  private static String line(String message) {
    if (message.length() <= LONGEST_START + LONGEST_END) {
      return PlainText.line(message);
    }
    return PlainText.line(message, LONGEST_START)
        + PlainText.line(message.substring(message.length() - LONGEST_END));
  }
}
