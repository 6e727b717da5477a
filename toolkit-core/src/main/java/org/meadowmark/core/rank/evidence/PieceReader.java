package org.meadowmark.core.rank.evidence;

import java.util.OptionalDouble;
import org.meadowmark.core.survey.RankingParameters;

/** Reads the evidence of a straight piece of scar, a few metres long. */
public final class PieceReader {
  private final RankingParameters limits;

  /**
   * Creates a reader.
   *
   * @param limits angles along and across, reach of the channel's edge, draft of boats
   */
  public PieceReader(RankingParameters limits) {
    this.limits = limits;
  }

  /**
   * How one end of a piece lies to the channel.
   *
   * @param metres distance to the centreline on the ground
   * @param angleDegrees angle between scar and channel at the nearest point, 0–90
   * @param insideBend whether it lies on the inside of a bend
   */
  public record End(double metres, double angleDegrees, boolean insideBend) {}

  /**
   * {@return the evidence of a piece: angle and distance are those of its two ends, averaged}
   *
   * @param metres length on the ground
   * @param from one end
   * @param to other end
   * @param depthMetres depth of the water there, where known
   */
  public PartEvidence read(double metres, End from, End to, OptionalDouble depthMetres) {
    double angle = (from.angleDegrees + to.angleDegrees) / 2;
    boolean along = angle < limits.nearParallelDegrees();
    boolean edge = along && (from.metres + to.metres) / 2 <= limits.edgeReachMetres();
    boolean bend = edge && (from.insideBend || to.insideBend);
    boolean known = depthMetres.isPresent();
    boolean shallow = known && depthMetres.getAsDouble() < limits.boatDraftMetres();
    return new PartEvidence(
        metres,
        Math.min(from.metres, to.metres),
        angle * metres,
        along ? metres : 0,
        edge ? metres : 0,
        bend ? metres : 0,
        angle > limits.nearAcrossDegrees() ? metres : 0,
        known ? metres : 0,
        known ? depthMetres.getAsDouble() * metres : 0,
        shallow ? metres : 0);
  }
}
