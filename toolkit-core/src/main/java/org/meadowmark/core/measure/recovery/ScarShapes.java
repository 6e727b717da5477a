package org.meadowmark.core.measure.recovery;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.measure.ScarMeasure;
import org.meadowmark.core.measure.ScarOutline;
import org.meadowmark.core.model.Scar;

/** Picks the shape that a scar closes by. */
final class ScarShapes {
  /** A line whose footprint differs by less from length times width is a strip: bends are mild. */
  private static final double STRIP_TOLERANCE = 5e-3;

  private ScarShapes() {}

  /** Strips where the line is simple, else the outline, in ground metres. */
  static ScarShape of(ScarMeasure measure) {
    Scar scar = measure.scar();
    Geometry geometry = scar.geometry();
    if (!scar.isLine()) {
      double ground = measure.footprintSquareMetres();
      return new OutlineShape(geometry, ground > 0 ? Math.sqrt(geometry.getArea() / ground) : 1);
    }
    double factor = measure.lengthMetres() > 0 ? geometry.getLength() / measure.lengthMetres() : 1;
    double strips = measure.lengthMetres() * scar.widthMetres();
    if (Math.abs(measure.footprintSquareMetres() - strips) > STRIP_TOLERANCE * strips) {
      return new OutlineShape(ScarOutline.of(scar, factor), factor);
    }
    List<Double> lengths = new ArrayList<>();
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      lengths.add(geometry.getGeometryN(i).getLength() / factor);
    }
    return new StripShape(scar.widthMetres(), lengths);
  }
}
