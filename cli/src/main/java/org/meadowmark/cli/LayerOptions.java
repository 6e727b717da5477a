package org.meadowmark.cli;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.survey.SurveyDraft;
import org.meadowmark.core.survey.SurveyDraft.Place;
import picocli.CommandLine.Option;

/** Options that name layers and say how to read them. */
final class LayerOptions {
  private static final String FILE = "FILE[#LAYER]";
  private static final String REPEAT = " May be given several times.";

  private final Map<LayerRole, List<Place>> places = new EnumMap<>(LayerRole.class);

  @Option(
      names = "--crs",
      order = 8,
      paramLabel = "ROLE=CODE",
      description =
          "Reference system of a layer, such as scars=EPSG:32617, where the file does not say it or"
              + " says it wrong. Roles: scars, beds, channels, areas, surveyed, barriers, depth.")
  private Map<String, String> crs = new LinkedHashMap<>();

  @Option(
      names = "--axis-order",
      order = 9,
      paramLabel = "ROLE=ORDER",
      description =
          "Order of the two ordinates in a layer: east-first (default) or as-defined, which is the"
              + " authority's own.")
  private Map<String, String> axisOrders = new LinkedHashMap<>();

  @Option(
      names = "--attribute",
      order = 10,
      paramLabel = "ROLE.PROP=NAME",
      description =
          "Attribute that holds a property, as in scars.width=WIDTH_FT. Properties: id, name,"
              + " cause, width, date, species, texture, depth.")
  private Map<String, String> attributes = new LinkedHashMap<>();

  @Option(
      names = "--width-unit",
      order = 11,
      paramLabel = "ROLE=UNIT",
      description = "Unit of width and depth in a layer: m (default), cm, mm, in, ft, us-ft.")
  private Map<String, String> widthUnits = new LinkedHashMap<>();

  @Option(
      names = "--scars",
      order = 1,
      paramLabel = FILE,
      converter = LayerPlace.class,
      description = "Scar lines and polygons." + REPEAT)
  void setScars(List<Place> given) {
    places.put(LayerRole.SCARS, given);
  }

  @Option(
      names = "--beds",
      order = 2,
      paramLabel = FILE,
      converter = LayerPlace.class,
      description = "Seagrass or eelgrass beds." + REPEAT)
  void setBeds(List<Place> given) {
    places.put(LayerRole.BEDS, given);
  }

  @Option(
      names = "--channels",
      order = 3,
      paramLabel = FILE,
      converter = LayerPlace.class,
      description = "Channel centrelines." + REPEAT)
  void setChannels(List<Place> given) {
    places.put(LayerRole.CHANNELS, given);
  }

  @Option(
      names = "--areas",
      order = 4,
      paramLabel = FILE,
      converter = LayerPlace.class,
      description = "Management areas, for which totals are given." + REPEAT)
  void setAreas(List<Place> given) {
    places.put(LayerRole.MANAGEMENT_AREAS, given);
  }

  @Option(
      names = "--surveyed",
      order = 5,
      paramLabel = FILE,
      converter = LayerPlace.class,
      description = "Area that was looked at. Damage outside it is unknown." + REPEAT)
  void setSurveyed(List<Place> given) {
    places.put(LayerRole.SURVEYED_AREA, given);
  }

  @Option(
      names = "--barriers",
      order = 6,
      paramLabel = FILE,
      converter = LayerPlace.class,
      description = "Land and structures that boats and fish cannot cross." + REPEAT)
  void setBarriers(List<Place> given) {
    places.put(LayerRole.BARRIERS, given);
  }

  @Option(
      names = "--depth",
      order = 7,
      paramLabel = FILE,
      converter = LayerPlace.class,
      description = "Water depth." + REPEAT)
  void setDepth(List<Place> given) {
    places.put(LayerRole.DEPTH, given);
  }

  /** Whether none was given. */
  boolean areAbsent() {
    return places.isEmpty()
        && crs.isEmpty()
        && axisOrders.isEmpty()
        && attributes.isEmpty()
        && widthUnits.isEmpty();
  }

  /**
   * The survey with these options laid over it.
   *
   * @throws MeadowmarkException if an option is wrong
   */
  SurveyDraft over(SurveyDraft survey) {
    SurveyDraft draft = survey;
    for (Map.Entry<LayerRole, List<Place>> place : places.entrySet()) {
      draft = draft.withPlaces(place.getKey(), place.getValue());
    }
    for (Map.Entry<String, String> option : crs.entrySet()) {
      String where = "--crs " + option.getKey();
      draft = draft.withCrs(role(option.getKey(), where), option.getValue(), where);
    }
    for (Map.Entry<String, String> option : axisOrders.entrySet()) {
      String where = "--axis-order " + option.getKey();
      draft = draft.withAxisOrder(role(option.getKey(), where), option.getValue(), where);
    }
    for (Map.Entry<String, String> option : attributes.entrySet()) {
      draft = withAttribute(draft, option.getKey(), option.getValue());
    }
    for (Map.Entry<String, String> option : widthUnits.entrySet()) {
      String where = "--width-unit " + option.getKey();
      draft = draft.withWidthUnit(role(option.getKey(), where), option.getValue(), where);
    }
    return draft;
  }

  private static SurveyDraft withAttribute(SurveyDraft draft, String property, String attribute) {
    String where = "--attribute " + property;
    int dot = property.indexOf('.');
    if (dot < 0) {
      throw new MeadowmarkException(
          where + ": names no property; write it like scars.width=WIDTH_FT");
    }
    return draft.withAttribute(
        role(property.substring(0, dot), where), property.substring(dot + 1), attribute, where);
  }

  private static LayerRole role(String name, String where) {
    return RoleName.find(name)
        .orElseThrow(
            () ->
                new MeadowmarkException(
                    where + ": unknown role '" + name + "'; use one of: " + RoleName.all()));
  }
}
