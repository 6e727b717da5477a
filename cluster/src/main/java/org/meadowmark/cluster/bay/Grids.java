package org.meadowmark.cluster.bay;

import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.project.AnalysisGrid;
import org.meadowmark.core.project.CrsCatalog;
import org.meadowmark.core.project.GeodesicGroundScale;
import org.meadowmark.core.survey.Parameters;

/** Analysis grids by their label; reference systems are looked up once a machine. */
public final class Grids {
  private static final CrsCatalog CATALOG = new CrsCatalog();
  private static final String METRES = " in metres";

  private Grids() {}

  /** Grid-to-ground scale of the grid of a bay. */
  static GroundScale scale(String label, Parameters parameters) {
    if (!parameters.groundScale()) {
      return GroundScale.NONE;
    }
    return new GeodesicGroundScale(of(label));
  }

  /** The grid of a label. */
  public static AnalysisGrid of(String label) {
    String code =
        label.endsWith(METRES) ? label.substring(0, label.length() - METRES.length()) : label;
    return AnalysisGrid.ofCode(code, CATALOG);
  }
}
