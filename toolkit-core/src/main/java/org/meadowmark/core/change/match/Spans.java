package org.meadowmark.core.change.match;

import java.util.Arrays;

/**
 * Stretches of a line, as positions along it: from, to, from, to, ascending, not touching. Arrays
 * are not changed once made.
 */
final class Spans {
  static final double[] NONE = {};

  private Spans() {}

  /** Joins the first {@code count} stretches of two arrays, in any order. */
  static double[] joined(double[] from, double[] to, int count) {
    if (count == 0) {
      return NONE;
    }
    sort(from, to, count);
    double[] joined = new double[2 * count];
    int size = 0;
    for (int i = 0; i < count; i++) {
      if (size > 0 && from[i] <= joined[size - 1]) {
        joined[size - 1] = Math.max(joined[size - 1], to[i]);
      } else {
        joined[size++] = from[i];
        joined[size++] = to[i];
      }
    }
    return Arrays.copyOf(joined, size);
  }

  /** Insertion sort: stretches come nearly in order, and few at a time. */
  private static void sort(double[] from, double[] to, int count) {
    for (int i = 1; i < count; i++) {
      double f = from[i];
      double t = to[i];
      int j = i - 1;
      while (j >= 0 && from[j] > f) {
        from[j + 1] = from[j];
        to[j + 1] = to[j];
        j--;
      }
      from[j + 1] = f;
      to[j + 1] = t;
    }
  }

  /** What lies in both. */
  static double[] common(double[] one, double[] other) {
    if (one.length == 0 || other.length == 0) {
      return NONE;
    }
    if (other.length == 2 && other[0] <= one[0] && other[1] >= one[one.length - 1]) {
      return one;
    }
    double[] common = new double[one.length + other.length];
    int size = 0;
    int i = 0;
    int j = 0;
    while (i < one.length && j < other.length) {
      double from = Math.max(one[i], other[j]);
      double to = Math.min(one[i + 1], other[j + 1]);
      if (to > from) {
        common[size++] = from;
        common[size++] = to;
      }
      if (one[i + 1] < other[j + 1]) {
        i += 2;
      } else {
        j += 2;
      }
    }
    return Arrays.copyOf(common, size);
  }

  static double length(double[] spans) {
    double length = 0;
    for (int i = 0; i < spans.length; i += 2) {
      length += spans[i + 1] - spans[i];
    }
    return length;
  }

  static boolean contains(double[] spans, double position) {
    for (int i = 0; i < spans.length; i += 2) {
      if (position >= spans[i] && position <= spans[i + 1]) {
        return true;
      }
    }
    return false;
  }
}
