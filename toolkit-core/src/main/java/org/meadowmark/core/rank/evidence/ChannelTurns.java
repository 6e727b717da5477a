package org.meadowmark.core.rank.evidence;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.algorithm.Angle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.linearref.LengthIndexedLine;

/**
 * How much the channel turns at each segment: the angle between the straight way from the far end
 * of the segment before to the segment's middle, and from there to the far end of the segment
 * after. At a junction or an end of the channel the segment's own end stands for the neighbour's.
 */
public final class ChannelTurns {
  private ChannelTurns() {}

  /**
   * {@return turns in degrees, more than −180 and at most 180, in the order and direction of the
   * lines; to the left is positive}
   *
   * @param lines noded lines, one a segment
   */
  public static double[] degrees(List<LineString> lines) {
    Map<Coordinate, int[]> meeting = new HashMap<>();
    for (int i = 0; i < lines.size(); i++) {
      add(meeting, first(lines.get(i)), i);
      add(meeting, last(lines.get(i)), i);
    }
    double[] turns = new double[lines.size()];
    for (int i = 0; i < turns.length; i++) {
      LineString line = lines.get(i);
      Coordinate middle = new LengthIndexedLine(line).extractPoint(line.getLength() / 2);
      Coordinate before = beyond(lines, meeting, i, first(line));
      Coordinate after = beyond(lines, meeting, i, last(line));
      turns[i] =
          before.equals2D(middle) || after.equals2D(middle)
              ? 0
              : Math.toDegrees(
                  Angle.normalize(Angle.angle(middle, after) - Angle.angle(before, middle)));
    }
    return turns;
  }

  /** The two lines at a node, or an empty array where there are more. */
  private static void add(Map<Coordinate, int[]> meeting, Coordinate node, int line) {
    int[] there = meeting.get(node);
    if (there == null) {
      meeting.put(node, new int[] {line});
    } else {
      meeting.put(node, there.length == 1 ? new int[] {there[0], line} : new int[0]);
    }
  }

  private static Coordinate beyond(
      List<LineString> lines, Map<Coordinate, int[]> meeting, int line, Coordinate end) {
    int[] there = meeting.get(end);
    if (there.length != 2 || there[0] == there[1]) {
      return end;
    }
    LineString other = lines.get(there[0] == line ? there[1] : there[0]);
    return first(other).equals2D(end) ? last(other) : first(other);
  }

  private static Coordinate first(LineString line) {
    return line.getCoordinateN(0);
  }

  private static Coordinate last(LineString line) {
    return line.getCoordinateN(line.getNumPoints() - 1);
  }
}
