package org.meadowmark.core.write;

import java.awt.Color;
import java.util.List;

/**
 * How people see colours.
 *
 * <p>Sources: simulation matrices for full colour blindness, Machado, Oliveira and Fernandes
 * (2009), <i>A physiologically-based model for simulation of color vision deficiency</i>, IEEE
 * Transactions on Visualization and Computer Graphics 15 (from memory); colour difference CIE 1976
 * in L*a*b* with the D65 white, where 2.3 is just noticeable (from memory).
 */
public enum Vision {
  FULL(1, 0, 0, 0, 1, 0, 0, 0, 1),
  NO_LONG(
      0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998),
  NO_MIDDLE(
      0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881),
  NO_SHORT(
      1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900);

  private final double[] matrix;

  Vision(double... matrix) {
    this.matrix = matrix;
  }

  private double[] lab(Color color) {
    double[] in = {linear(color.getRed()), linear(color.getGreen()), linear(color.getBlue())};
    double[] seen = new double[3];
    for (int row = 0; row < 3; row++) {
      double sum = 0;
      for (int i = 0; i < 3; i++) {
        sum += matrix[3 * row + i] * in[i];
      }
      seen[row] = Math.min(1, Math.max(0, sum));
    }
    double x = 0.4124564 * seen[0] + 0.3575761 * seen[1] + 0.1804375 * seen[2];
    double y = 0.2126729 * seen[0] + 0.7151522 * seen[1] + 0.0721750 * seen[2];
    double z = 0.0193339 * seen[0] + 0.1191920 * seen[1] + 0.9503041 * seen[2];
    double fx = response(x / 0.95047);
    double fy = response(y);
    double fz = response(z / 1.08883);
    return new double[] {116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)};
  }

  private static double linear(int component) {
    double c = component / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  private static double response(double t) {
    return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
  }

  /** Lightness of a colour, 0–100. */
  public double lightness(Color color) {
    return lab(color)[0];
  }

  /** Difference of two colours. */
  public double difference(Color one, Color other) {
    double[] a = lab(one);
    double[] b = lab(other);
    double square = 0;
    for (int k = 0; k < 3; k++) {
      square += (a[k] - b[k]) * (a[k] - b[k]);
    }
    return Math.sqrt(square);
  }

  /** Smallest difference of any two of some colours. */
  public double smallestDifference(List<Color> colours) {
    double smallest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < colours.size(); i++) {
      for (int j = 0; j < i; j++) {
        smallest = Math.min(smallest, difference(colours.get(i), colours.get(j)));
      }
    }
    return smallest;
  }
}
