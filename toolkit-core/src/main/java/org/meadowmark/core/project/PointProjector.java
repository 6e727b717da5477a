package org.meadowmark.core.project;

import java.util.Optional;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.LayerRole;

/** Brings single places to the analysis grid of a survey. */
public final class PointProjector {
  private static final String IN_METRES = " in metres";

  private final GeometryProjector projector;

  /**
   * Prepares for places in one reference system.
   *
   * @param from system of the places
   * @param gridLabel label of the analysis grid, as in a metric survey
   * @param where what the places were read from, for messages
   * @throws org.meadowmark.core.model.SurveyInputException if the system is not known
   */
  public PointProjector(CrsText from, String gridLabel, FeatureRef where) {
    CrsCatalog catalog = new CrsCatalog();
    ResolvedCrs source = catalog.resolve(from, LayerRole.CHANNELS, where);
    AnalysisGrid grid = AnalysisGrid.ofCode(gridCode(gridLabel), catalog);
    try {
      projector =
          new GeometryProjector(
              CRS.findMathTransform(source.crs(), grid.crs(), true), source.northFirst());
    } catch (FactoryException e) {
      throw new IllegalStateException("no way from " + source.label() + " to " + grid.label(), e);
    }
  }

  /**
   * {@return code that gives the grid of a label again}
   *
   * @param gridLabel label of an analysis grid, as in a metric survey
   */
  public static String gridCode(String gridLabel) {
    return gridLabel.endsWith(IN_METRES)
        ? gridLabel.substring(0, gridLabel.length() - IN_METRES.length())
        : gridLabel;
  }

  /**
   * {@return the place on the grid; empty where it cannot be projected}
   *
   * @param place geometry in the reference system that this projector was made for, ordinates in
   *     the order of the file
   */
  public Optional<Geometry> project(Geometry place) {
    try {
      return Optional.of(projector.project(place));
    } catch (TransformException e) {
      return Optional.empty();
    }
  }
}
