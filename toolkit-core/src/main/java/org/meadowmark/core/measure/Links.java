package org.meadowmark.core.measure;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.List;
import java.util.RandomAccess;

/** Links between pieces in columns, 16 bytes each, in order of their pieces. */
final class Links extends AbstractList<PieceGraph.Link> implements RandomAccess {
  private int count;
  private int[] firsts;
  private int[] seconds;
  private double[] lengthsMetres;

  private Links(int capacity) {
    firsts = new int[capacity];
    seconds = new int[capacity];
    lengthsMetres = new double[capacity];
  }

  Links() {
    this(8);
  }

  /** Copies links in the order that they have. */
  static Links of(List<PieceGraph.Link> links) {
    Links copy = new Links(links.size());
    links.forEach(link -> copy.append(link.first(), link.second(), link.metres()));
    return copy;
  }

  /** Links in columns, which are kept. */
  static Links of(int[] firsts, int[] seconds, double[] lengthsMetres) {
    Links links = new Links(0);
    links.firsts = firsts;
    links.seconds = seconds;
    links.lengthsMetres = lengthsMetres;
    links.count = firsts.length;
    return links;
  }

  /** Blocks of links one after the other. */
  static Links joined(List<Links> blocks) {
    Links all = new Links(blocks.stream().mapToInt(Links::size).sum());
    for (Links block : blocks) {
      System.arraycopy(block.firsts, 0, all.firsts, all.count, block.count);
      System.arraycopy(block.seconds, 0, all.seconds, all.count, block.count);
      System.arraycopy(block.lengthsMetres, 0, all.lengthsMetres, all.count, block.count);
      all.count += block.count;
    }
    return all;
  }

  void append(int first, int second, double metres) {
    if (count == firsts.length) {
      int size = count + Math.max(8, count / 2);
      firsts = Arrays.copyOf(firsts, size);
      seconds = Arrays.copyOf(seconds, size);
      lengthsMetres = Arrays.copyOf(lengthsMetres, size);
    }
    firsts[count] = first;
    seconds[count] = second;
    lengthsMetres[count++] = metres;
  }

  @Override
  public int size() {
    return count;
  }

  @Override
  public PieceGraph.Link get(int i) {
    return new PieceGraph.Link(firsts[i], seconds[i], lengthsMetres[i]);
  }

  int first(int i) {
    return firsts[i];
  }

  int second(int i) {
    return seconds[i];
  }

  double metres(int i) {
    return lengthsMetres[i];
  }

  int[] firsts() {
    return Arrays.copyOf(firsts, count);
  }

  int[] seconds() {
    return Arrays.copyOf(seconds, count);
  }

  double[] lengthsMetres() {
    return Arrays.copyOf(lengthsMetres, count);
  }
}
