package org.meadowmark.core.model;

import java.util.Comparator;

/** Order of feature ids: whole numbers by value and before text, text by code point. */
public final class Ids {
  /** Ties everywhere in the toolkit break in this order. */
  public static final Comparator<String> ORDER = Ids::compare;

  private static final int MAX_LONG_DIGITS = 18;

  private Ids() {}

  private static int compare(String left, String right) {
    boolean leftIsNumber = isWholeNumber(left);
    boolean rightIsNumber = isWholeNumber(right);
    if (leftIsNumber && rightIsNumber) {
      int byValue = Long.compare(Long.parseLong(left), Long.parseLong(right));
      return byValue != 0 ? byValue : left.compareTo(right);
    }
    if (leftIsNumber != rightIsNumber) {
      return leftIsNumber ? -1 : 1;
    }
    return left.compareTo(right);
  }

  private static boolean isWholeNumber(String id) {
    if (id.isEmpty() || id.length() > MAX_LONG_DIGITS) {
      return false;
    }
    for (int i = 0; i < id.length(); i++) {
      if (id.charAt(i) < '0' || id.charAt(i) > '9') {
        return false;
      }
    }
    return true;
  }
}
