package org.meadowmark.core.survey;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.LayerRole;

/**
 * One layer that a survey names.
 *
 * @param role what it stands for
 * @param file where it is
 * @param fileLabel the file as the user wrote it, for messages
 * @param layer layer inside the file, where the format has several; empty takes the only one
 * @param crs reference system that overrides or supplies what the file says, {@code EPSG:n}
 * @param axisOrder order of ordinates in the file
 * @param attributes attribute of the layer by property
 * @param valueNames for a property, the toolkit's word by the file's value (compared without case)
 * @param widthUnit unit of the width attribute and of depth: m, cm, mm, in, ft (international) or
 *     us-ft
 * @param geometryColumns how a CSV file holds its geometry
 */
public record LayerSource(
    LayerRole role,
    Path file,
    String fileLabel,
    Optional<String> layer,
    Optional<String> crs,
    AxisOrder axisOrder,
    Map<Field, String> attributes,
    Map<Field, Map<String, String>> valueNames,
    LengthUnit widthUnit,
    GeometryColumns geometryColumns) {

  /**
   * Columns of a CSV file that hold the geometry. All empty means: look for the usual names.
   *
   * @param wkt column with well-known text
   * @param x column with easting or longitude
   * @param y column with northing or latitude
   */
  public record GeometryColumns(Optional<String> wkt, Optional<String> x, Optional<String> y) {
    /** Look for the usual names. */
    public static final GeometryColumns USUAL =
        new GeometryColumns(Optional.empty(), Optional.empty(), Optional.empty());
  }

  /**
   * Refuses a layer of which a part is missing, and keeps copies of the maps.
   *
   * @param role what it stands for
   * @param file where it is
   * @param fileLabel the file as the user wrote it, for messages
   * @param layer layer inside the file, where the format has several; empty takes the only one
   * @param crs reference system that overrides or supplies what the file says, {@code EPSG:n}
   * @param axisOrder order of ordinates in the file
   * @param attributes attribute of the layer by property
   * @param valueNames for a property, the toolkit's word by the file's value (compared without
   *     case)
   * @param widthUnit unit of the width attribute and of depth: m, cm, mm, in, ft (international) or
   *     us-ft
   * @param geometryColumns how a CSV file holds its geometry
   * @throws NullPointerException if anything is null
   */
  public LayerSource {
    Objects.requireNonNull(role, "role");
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(fileLabel, "fileLabel");
    Objects.requireNonNull(layer, "layer");
    Objects.requireNonNull(crs, "crs");
    Objects.requireNonNull(axisOrder, "axisOrder");
    attributes = Map.copyOf(attributes);
    valueNames = Map.copyOf(valueNames);
    Objects.requireNonNull(widthUnit, "widthUnit");
    Objects.requireNonNull(geometryColumns, "geometryColumns");
  }

  /**
   * {@return a layer with no options: a file and what it stands for}
   *
   * @param role what the layer stands for
   * @param file where it is; its path serves for messages too
   */
  public static LayerSource of(LayerRole role, Path file) {
    return new LayerSource(
        role,
        file,
        file.toString(),
        Optional.empty(),
        Optional.empty(),
        AxisOrder.EAST_FIRST,
        Map.of(),
        Map.of(),
        LengthUnit.METRE,
        GeometryColumns.USUAL);
  }

  /**
   * {@return the same layer with another place: file and layer name are replaced; reference system
   * and axis order, which belong to the file, are forgotten; attributes, values, units and columns
   * stay}
   *
   * @param newFile path of the other file
   * @param newLabel the file as the user wrote it, for messages
   * @param newLayer layer inside the file, where the format has several; empty takes the only one
   */
  public LayerSource withFile(Path newFile, String newLabel, Optional<String> newLayer) {
    return new LayerSource(
        role,
        newFile,
        newLabel,
        newLayer,
        Optional.empty(),
        AxisOrder.EAST_FIRST,
        attributes,
        valueNames,
        widthUnit,
        geometryColumns);
  }

  /**
   * {@return the same layer with another reference system}
   *
   * @param code {@code EPSG:n}; not looked up before the layer is read
   */
  public LayerSource withCrs(String code) {
    return new LayerSource(
        role,
        file,
        fileLabel,
        layer,
        Optional.of(code),
        axisOrder,
        attributes,
        valueNames,
        widthUnit,
        geometryColumns);
  }

  /**
   * {@return the same layer with another order of ordinates}
   *
   * @param order order of ordinates in the file
   */
  public LayerSource withAxisOrder(AxisOrder order) {
    return new LayerSource(
        role,
        file,
        fileLabel,
        layer,
        crs,
        order,
        attributes,
        valueNames,
        widthUnit,
        geometryColumns);
  }

  /**
   * {@return the same layer with one property mapped to an attribute}
   *
   * @param property what the attribute holds; an earlier mapping of it is forgotten
   * @param attribute name of the attribute in the file
   */
  public LayerSource withAttribute(Field property, String attribute) {
    Map<Field, String> mapped = new EnumMap<>(Field.class);
    mapped.putAll(attributes);
    mapped.put(property, attribute);
    return new LayerSource(
        role,
        file,
        fileLabel,
        layer,
        crs,
        axisOrder,
        mapped,
        valueNames,
        widthUnit,
        geometryColumns);
  }

  /**
   * {@return the same layer with another unit of width and depth}
   *
   * @param unit unit that the attributes are in
   */
  public LayerSource withWidthUnit(LengthUnit unit) {
    return new LayerSource(
        role,
        file,
        fileLabel,
        layer,
        crs,
        axisOrder,
        attributes,
        valueNames,
        unit,
        geometryColumns);
  }
}
