package org.meadowmark.core.project;

import java.util.Objects;
import javax.measure.Unit;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.cs.AxisDirection;
import org.geotools.api.referencing.cs.CoordinateSystem;
import org.geotools.referencing.cs.DefaultCartesianCS;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.SurveyInputException;
import si.uom.SI;

/**
 * The grid that everything is measured on: a projected reference system in metres, easting first.
 *
 * <p>Unless a system is given, it is the zone of Universal Transverse Mercator on WGS 84 that holds
 * the middle of the beds: zone {@code floor((longitude + 180) / 6) + 1}, north or south of the
 * equator. The wider zones off Norway and Svalbard are a convention of map sheets and are not
 * followed: they would only raise the distortion.
 *
 * <p>A system in another unit, such as the US survey foot, is used with its projection unchanged
 * and its coordinates in metres.
 *
 * @param label code, with "in metres" added where the unit was changed
 * @param crs the reference system
 */
public record AnalysisGrid(String label, ProjectedCRS crs) {
  private static final double SOUTHERN_LIMIT = -80;
  private static final double NORTHERN_LIMIT = 84;

  /**
   * Refuses a grid of which a part is missing.
   *
   * @param label code, with "in metres" added where the unit was changed
   * @param crs the reference system
   * @throws NullPointerException if anything is null
   */
  public AnalysisGrid {
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(crs, "crs");
  }

  /**
   * {@return the UTM zone of a place}
   *
   * @param longitude degrees east
   * @param latitude degrees north
   * @param catalog where the zone is looked up
   * @throws SurveyInputException if the place is beyond 84° N or 80° S, where there is no zone
   */
  public static AnalysisGrid utm(double longitude, double latitude, CrsCatalog catalog) {
    if (!(latitude >= SOUTHERN_LIMIT && latitude <= NORTHERN_LIMIT)) {
      throw refused(
          FindingCode.OUTSIDE_CRS_DOMAIN,
          "the middle of the beds is at latitude "
              + Math.round(latitude)
              + "°, where there is no UTM zone",
          "check the order of latitude and longitude in the layers, or set analysis_crs");
    }
    return ofCode(utmCode(longitude, latitude), catalog);
  }

  /** Code of the UTM zone of a place. */
  static String utmCode(double longitude, double latitude) {
    double turned = longitude - 360 * Math.floor((longitude + 180) / 360);
    int zone = (int) Math.floor((turned + 180) / 6) + 1;
    return "EPSG:" + ((latitude < 0 ? 32700 : 32600) + zone);
  }

  /**
   * {@return a grid that the user chose}
   *
   * @param code {@code EPSG:n}
   * @param catalog where the code is looked up
   * @throws SurveyInputException if it is unknown or not projected
   */
  public static AnalysisGrid ofCode(String code, CrsCatalog catalog) {
    CoordinateReferenceSystem crs;
    try {
      crs =
          catalog
              .resolve(CrsText.ofCode(code), LayerRole.BEDS, FeatureRef.layer("analysis_crs", ""))
              .crs();
    } catch (SurveyInputException e) {
      throw refused(
          FindingCode.CRS_UNKNOWN,
          "the reference system '" + code + "' is not known",
          "give a projected one that EPSG lists, such as EPSG:32617");
    }
    if (!(crs instanceof ProjectedCRS projected)) {
      throw refused(
          FindingCode.CRS_UNKNOWN,
          code + " is in degrees, which cannot be measured in",
          "give a projected one, such as EPSG:32617, or none to take the best UTM zone");
    }
    return isMetric(projected)
        ? new AnalysisGrid(code, projected)
        : new AnalysisGrid(code + " in metres", inMetres(projected));
  }

  /** {@return well-known text of the system} */
  public String wkt() {
    return crs.toWKT();
  }

  /** The geographic system that the projection starts from. */
  GeographicCRS base() {
    return crs.getBaseCRS();
  }

  private static boolean isMetric(ProjectedCRS crs) {
    CoordinateSystem axes = crs.getCoordinateSystem();
    Unit<?> unit = axes.getAxis(0).getUnit();
    return unit.equals(SI.METRE)
        && axes.getAxis(1).getUnit().equals(unit)
        && axes.getAxis(0).getDirection().equals(AxisDirection.EAST)
        && axes.getAxis(1).getDirection().equals(AxisDirection.NORTH);
  }

  private static ProjectedCRS inMetres(ProjectedCRS crs) {
    try {
      return Reprojection.of(
          crs.getName().getCode() + " in metres",
          crs,
          crs.getBaseCRS(),
          DefaultCartesianCS.PROJECTED);
    } catch (FactoryException e) {
      throw new IllegalStateException("cannot express " + crs.getName() + " in metres", e);
    }
  }

  private static SurveyInputException refused(FindingCode code, String problem, String action) {
    return new SurveyInputException(
        new Finding(
            code,
            Finding.Level.ERROR,
            Finding.Treatment.REFUSED,
            LayerRole.BEDS,
            FeatureRef.layer("analysis_crs", ""),
            problem,
            action));
  }
}
