package org.meadowmark.core.write.chart;

/** A bar of a chart: two bars may have the same label. */
record RowKey(int place, String label) implements Comparable<RowKey> {
  @Override
  public int compareTo(RowKey other) {
    return Integer.compare(place, other.place);
  }

  @Override
  public String toString() {
    return label;
  }
}
