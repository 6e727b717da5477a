package org.meadowmark.core.hostile;

import org.meadowmark.core.model.Finding;

/** What every message about a bad file must look like, whatever the file holds. */
final class Contract {
  private static final int LONGEST = 2_000;

  private Contract() {}

  static void check(Finding finding) {
    check(finding.message());
  }

  /** {@code file: ...: what is wrong; what to do}, in one line that a terminal can show. */
  static void check(String message) {
    if (message == null || !message.contains(": ") || !message.contains("; ")) {
      throw new IllegalStateException("not 'file: what is wrong; what to do': " + message);
    }
    if (message.codePoints().anyMatch(Contract::unprintable)) {
      throw new IllegalStateException("a control character in: " + message);
    }
    if (message.length() > LONGEST) {
      throw new IllegalStateException(
          message.length() + " characters in: " + message.substring(0, LONGEST));
    }
    if (message.contains("Cannot invoke") || message.contains("Exception: ")) {
      throw new IllegalStateException("the words of a programming fault in: " + message);
    }
  }

  /** Control characters, and those that turn the direction of writing. */
  static boolean unprintable(int c) {
    return Character.isISOControl(c)
        || c == 0x2028
        || c == 0x2029
        || (c >= 0x202A && c <= 0x202E)
        || (c >= 0x2066 && c <= 0x2069);
  }
}
