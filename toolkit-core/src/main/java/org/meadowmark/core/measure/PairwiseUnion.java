package org.meadowmark.core.measure;

import java.util.Collection;
import java.util.function.BinaryOperator;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.locationtech.jts.operation.union.UnionStrategy;

/** Union of many polygons by a way of one's own to unite two. */
final class PairwiseUnion {
  private PairwiseUnion() {}

  static Geometry of(Collection<? extends Geometry> parts, BinaryOperator<Geometry> two) {
    UnaryUnionOp union = new UnaryUnionOp(parts);
    union.setUnionFunction(
        new UnionStrategy() {
          @Override
          public Geometry union(Geometry left, Geometry right) {
            return two.apply(left, right);
          }

          @Override
          public boolean isFloatingPrecision() {
            return true;
          }
        });
    return union.union();
  }
}
