package org.meadowmark.core.write.style;

/** Which features a rule draws. */
sealed interface Condition {
  /** All features. */
  record Always() implements Condition {}

  /** Features that no other rule of the style draws. */
  record Otherwise() implements Condition {}

  /** Features whose property has a value. */
  record Equal(String property, String value) implements Condition {}

  /** Features whose property lies between two numbers, both included. */
  record Between(String property, long low, long high) implements Condition {}
}
