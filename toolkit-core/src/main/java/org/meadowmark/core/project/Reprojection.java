package org.meadowmark.core.project;

import java.util.HashMap;
import java.util.Map;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.IdentifiedObject;
import org.geotools.api.referencing.ReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.cs.CartesianCS;
import org.geotools.referencing.ReferencingFactoryFinder;
import org.geotools.referencing.operation.DefiningConversion;

/** Makes a projected system with the projection of another. */
final class Reprojection {
  private Reprojection() {}

  /**
   * The projection of one system on another datum or with other axes.
   *
   * @param name name of the new system
   * @param projection system whose projection method and parameters are taken
   * @param base geographic system to project from
   * @param axes axes of the new system
   */
  static ProjectedCRS of(String name, ProjectedCRS projection, GeographicCRS base, CartesianCS axes)
      throws FactoryException {
    // A defining conversion carries parameters only. The system's own conversion would bring its
    // transform along, unit of the old axes included, whatever the new axes are.
    DefiningConversion conversion =
        new DefiningConversion(
            projection.getConversionFromBase().getName().getCode(),
            projection.getConversionFromBase().getParameterValues());
    Map<String, Object> properties = new HashMap<>();
    properties.put(IdentifiedObject.NAME_KEY, name);
    properties.put(ReferenceSystem.DOMAIN_OF_VALIDITY_KEY, projection.getDomainOfValidity());
    return ReferencingFactoryFinder.getCRSFactory(null)
        .createProjectedCRS(properties, base, conversion, axes);
  }
}
