package org.meadowmark.cluster.geoparquet;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Optional;
import javax.measure.Unit;
import org.geotools.api.parameter.GeneralParameterValue;
import org.geotools.api.parameter.ParameterValue;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.cs.CoordinateSystem;
import org.geotools.api.referencing.cs.CoordinateSystemAxis;
import org.geotools.api.referencing.datum.Ellipsoid;
import org.meadowmark.core.model.CrsText;
import si.uom.NonSI;
import si.uom.SI;

/**
 * Reference systems as GeoParquet has them: PROJJSON.
 *
 * <p>Read is the code of the {@code id}; a system without one is not understood. Written are name,
 * datum, projection, axes and {@code id}.
 *
 * <p>Sources: GeoParquet 1.1.0, section "crs"; PROJ, <i>PROJJSON schema</i> 0.7.
 */
public final class ProjJson {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String SCHEMA = "https://proj.org/schemas/v0.7/projjson.schema.json";

  private ProjJson() {}

  /** The code of a system, {@code EPSG:n}; empty where it has none. */
  public static Optional<CrsText> code(String projJson) {
    JsonNode id;
    try {
      JsonNode root = JSON.readTree(projJson);
      id = root.has("id") ? root.get("id") : root.path("ids").path(0);
    } catch (JsonProcessingException e) {
      return Optional.empty();
    }
    String authority = id.path("authority").asText("");
    String code = id.path("code").asText("");
    return authority.isEmpty() || code.isEmpty()
        ? Optional.empty()
        : Optional.of(CrsText.ofCode(authority.toUpperCase(Locale.ROOT) + ":" + code));
  }

  /** The name of a system, for messages. */
  static String name(String projJson) {
    try {
      return JSON.readTree(projJson).path("name").asText("without a name");
    } catch (JsonProcessingException e) {
      return "that is no JSON";
    }
  }

  /**
   * A system as PROJJSON, easting or longitude first as the coordinates in a GeoParquet file are.
   *
   * @param crs a geographic or projected system
   * @param code its code, {@code AUTHORITY:CODE}
   */
  public static String of(CoordinateReferenceSystem crs, String code) {
    ObjectNode root = JSON.createObjectNode();
    root.put("$schema", SCHEMA);
    if (crs instanceof ProjectedCRS projected) {
      root.put("type", "ProjectedCRS");
      root.put("name", projected.getName().getCode());
      root.set("base_crs", geographic(projected.getBaseCRS()));
      root.set("conversion", conversion(projected));
      root.set("coordinate_system", axes(projected.getCoordinateSystem(), "Cartesian"));
    } else {
      root.setAll(geographic((GeographicCRS) crs));
    }
    int colon = code.indexOf(':');
    ObjectNode id = root.putObject("id");
    id.put("authority", code.substring(0, colon));
    String number = code.substring(colon + 1);
    if (number.matches("[0-9]{1,9}")) {
      id.put("code", Integer.parseInt(number));
    } else {
      id.put("code", number);
    }
    return root.toString();
  }

  private static ObjectNode geographic(GeographicCRS crs) {
    ObjectNode node = JSON.createObjectNode();
    node.put("type", "GeographicCRS");
    node.put("name", crs.getName().getCode());
    ObjectNode datum = node.putObject("datum");
    datum.put("type", "GeodeticReferenceFrame");
    datum.put("name", crs.getDatum().getName().getCode());
    Ellipsoid figure = crs.getDatum().getEllipsoid();
    ObjectNode ellipsoid = datum.putObject("ellipsoid");
    ellipsoid.put("name", figure.getName().getCode());
    double metres = figure.getAxisUnit().getConverterTo(SI.METRE).convert(1.0);
    ellipsoid.put("semi_major_axis", figure.getSemiMajorAxis() * metres);
    if (figure.isSphere()) {
      ellipsoid.put("semi_minor_axis", figure.getSemiMajorAxis() * metres);
    } else {
      ellipsoid.put("inverse_flattening", figure.getInverseFlattening());
    }
    node.set("coordinate_system", axes(crs.getCoordinateSystem(), "ellipsoidal"));
    return node;
  }

  private static ObjectNode conversion(ProjectedCRS crs) {
    ObjectNode node = JSON.createObjectNode();
    node.put("name", crs.getConversionFromBase().getName().getCode());
    node.putObject("method")
        .put("name", crs.getConversionFromBase().getMethod().getName().getCode());
    ArrayNode parameters = node.putArray("parameters");
    for (GeneralParameterValue value : crs.getConversionFromBase().getParameterValues().values()) {
      if (value instanceof ParameterValue<?> number && number.getValue() instanceof Double size) {
        String name = number.getDescriptor().getName().getCode();
        if (!name.equals("semi_major") && !name.equals("semi_minor")) {
          ObjectNode parameter = parameters.addObject();
          parameter.put("name", name);
          parameter.put("value", size);
          parameter.set("unit", unit(number.getUnit()));
        }
      }
    }
    return node;
  }

  private static ObjectNode axes(CoordinateSystem system, String subtype) {
    ObjectNode node = JSON.createObjectNode();
    node.put("subtype", subtype);
    ArrayNode axes = node.putArray("axis");
    for (int i = 0; i < system.getDimension(); i++) {
      CoordinateSystemAxis axis = system.getAxis(i);
      ObjectNode each = axes.addObject();
      each.put("name", axis.getName().getCode());
      each.put("abbreviation", axis.getAbbreviation());
      each.put("direction", axis.getDirection().name().toLowerCase(Locale.ROOT));
      each.set("unit", unit(axis.getUnit()));
    }
    return node;
  }

  private static JsonNode unit(Unit<?> unit) {
    if (unit == null || unit.equals(tech.units.indriya.AbstractUnit.ONE)) {
      return JSON.getNodeFactory().textNode("unity");
    }
    if (unit.equals(SI.METRE)) {
      return JSON.getNodeFactory().textNode("metre");
    }
    if (unit.equals(NonSI.DEGREE_ANGLE)) {
      return JSON.getNodeFactory().textNode("degree");
    }
    ObjectNode node = JSON.createObjectNode();
    boolean length = unit.isCompatible(SI.METRE);
    node.put("type", length ? "LinearUnit" : "AngularUnit");
    node.put("name", unit.toString());
    node.put(
        "conversion_factor",
        length
            ? unit.asType(javax.measure.quantity.Length.class).getConverterTo(SI.METRE).convert(1.0)
            : unit.asType(javax.measure.quantity.Angle.class)
                .getConverterTo(SI.RADIAN)
                .convert(1.0));
    return node;
  }
}
