package org.meadowmark.core.plan.layout;

import java.util.List;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.index.strtree.STRtree;
import org.meadowmark.core.measure.StrTreeQuery;
import org.meadowmark.core.model.Bed;

/** Whether a place is in a bed. For one thread. */
final class GrassAreas {
  private final STRtree tree = new STRtree();

  private static final class Area {
    private final Bed bed;
    private IndexedPointInAreaLocator locator;

    private Area(Bed bed) {
      this.bed = bed;
    }

    private boolean holds(Coordinate place) {
      if (!bed.geometry().getEnvelopeInternal().covers(place)) {
        return false;
      }
      if (locator == null) {
        locator = new IndexedPointInAreaLocator(bed.geometry());
      }
      return locator.locate(place) != Location.EXTERIOR;
    }
  }

  GrassAreas(List<Bed> beds) {
    beds.forEach(bed -> tree.insert(bed.geometry().getEnvelopeInternal(), new Area(bed)));
    tree.build();
  }

  boolean holds(Coordinate place) {
    for (Area area : StrTreeQuery.<Area>items(tree, new Envelope(place))) {
      if (area.holds(place)) {
        return true;
      }
    }
    return false;
  }
}
