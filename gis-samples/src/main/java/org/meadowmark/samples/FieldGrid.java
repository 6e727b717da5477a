package org.meadowmark.samples;

import java.util.stream.IntStream;

/** Values at the nodes of a square grid, in local metres. */
final class FieldGrid {
  private final double cellMetres;
  private final int columns;
  private final int rows;
  private final float[] values;

  FieldGrid(double cellMetres, int columns, int rows) {
    this.cellMetres = cellMetres;
    this.columns = columns;
    this.rows = rows;
    this.values = new float[Math.multiplyExact(columns, rows)];
  }

  /** A value by place. */
  @FunctionalInterface
  interface Function {
    double at(double x, double y, int column, int row);
  }

  void fill(Function function) {
    IntStream.range(0, rows)
        .parallel()
        .forEach(
            row -> {
              for (int column = 0; column < columns; column++) {
                values[row * columns + column] =
                    (float) function.at(column * cellMetres, row * cellMetres, column, row);
              }
            });
  }

  /** Sets the outermost nodes, so that contours close inside the grid. */
  void setBorder(float value) {
    for (int column = 0; column < columns; column++) {
      set(column, 0, value);
      set(column, rows - 1, value);
    }
    for (int row = 0; row < rows; row++) {
      set(0, row, value);
      set(columns - 1, row, value);
    }
  }

  double cellMetres() {
    return cellMetres;
  }

  int columns() {
    return columns;
  }

  int rows() {
    return rows;
  }

  float get(int column, int row) {
    return values[row * columns + column];
  }

  void set(int column, int row, float value) {
    values[row * columns + column] = value;
  }

  /** Bilinear between nodes; the nearest value outside. */
  double at(double x, double y) {
    double gridX = Math.min(Math.max(x / cellMetres, 0), columns - 1.000001);
    double gridY = Math.min(Math.max(y / cellMetres, 0), rows - 1.000001);
    int column = (int) gridX;
    int row = (int) gridY;
    double dx = gridX - column;
    double dy = gridY - row;
    double bottom = get(column, row) * (1 - dx) + get(column + 1, row) * dx;
    double top = get(column, row + 1) * (1 - dx) + get(column + 1, row + 1) * dx;
    return bottom * (1 - dy) + top * dy;
  }

  boolean covers(double x, double y) {
    return x >= 0 && y >= 0 && x <= (columns - 1) * cellMetres && y <= (rows - 1) * cellMetres;
  }
}
