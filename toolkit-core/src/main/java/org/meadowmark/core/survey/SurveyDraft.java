package org.meadowmark.core.survey;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.reference.ReferenceTables;

/**
 * A survey that is still being put together: what its file says, and options laid over it. Every
 * option stands above the file, and a later one above an earlier.
 *
 * @param name name for reports, where given
 * @param date date of the survey, where given
 * @param file the survey file, where there is one
 * @param layers layers given so far
 * @param settings values of parameters given so far; the later holds
 * @param facts how the survey was made, as far as its file says
 */
public record SurveyDraft(
    Optional<String> name,
    Optional<LocalDate> date,
    Optional<Path> file,
    List<LayerSource> layers,
    List<Setting> settings,
    SurveyFacts facts) {

  /** Nothing given yet. */
  public static final SurveyDraft EMPTY =
      new SurveyDraft(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of(),
          List.of(),
          SurveyFacts.NONE);

  private static final String UNNAMED = "survey";

  /**
   * Where a layer is found.
   *
   * @param file path of the file
   * @param label the file as the user wrote it, for messages
   * @param layer layer inside the file, where the format has several; empty takes the only one
   */
  public record Place(Path file, String label, Optional<String> layer) {}

  /**
   * Keeps copies of the lists.
   *
   * @param name name for reports, where given
   * @param date date of the survey, where given
   * @param file the survey file, where there is one
   * @param layers layers given so far
   * @param settings values of parameters given so far; the later holds
   * @param facts how the survey was made, as far as its file says
   * @throws NullPointerException if a list or an entry of it is null
   */
  public SurveyDraft {
    layers = List.copyOf(layers);
    settings = List.copyOf(settings);
  }

  /**
   * {@return the same survey under another name}
   *
   * @param newName name for reports
   */
  public SurveyDraft withName(String newName) {
    return new SurveyDraft(Optional.of(newName), date, file, layers, settings, facts);
  }

  /**
   * {@return the same survey of another date}
   *
   * @param newDate day of the survey
   */
  public SurveyDraft withDate(LocalDate newDate) {
    return new SurveyDraft(name, Optional.of(newDate), file, layers, settings, facts);
  }

  /**
   * {@return the same survey with a value for a parameter}
   *
   * @param setting the value, not looked at before {@link #define}; it stands above earlier ones
   */
  public SurveyDraft withSetting(Setting setting) {
    List<Setting> more = new ArrayList<>(settings);
    more.add(setting);
    return new SurveyDraft(name, date, file, layers, more, facts);
  }

  /**
   * {@return the same survey with other files for a role} They take the place of all layers of the
   * role; attributes, values, units and columns of the first of those are kept (see {@link
   * LayerSource#withFile}).
   *
   * @param role what the files stand for
   * @param places where they are; none leaves the survey without layers of that role
   */
  public SurveyDraft withPlaces(LayerRole role, List<Place> places) {
    Optional<LayerSource> old = layers.stream().filter(l -> l.role() == role).findFirst();
    List<LayerSource> others = new ArrayList<>(layers);
    others.removeIf(layer -> layer.role() == role);
    for (Place place : places) {
      LayerSource base = old.orElseGet(() -> LayerSource.of(role, place.file()));
      others.add(base.withFile(place.file(), place.label(), place.layer()));
    }
    return new SurveyDraft(name, date, file, others, settings, facts);
  }

  /**
   * {@return the same survey with another reference system for the layers of a role}
   *
   * @param role whose layers to change
   * @param code {@code EPSG:n}
   * @param where where it was given, for messages
   * @throws MeadowmarkException if no layer has the role or the code is none
   */
  public SurveyDraft withCrs(LayerRole role, String code, String where) {
    String checked = CrsCode.of(code, where);
    return withEach(role, where, layer -> layer.withCrs(checked));
  }

  /**
   * {@return the same survey with another order of ordinates for the layers of a role}
   *
   * @param role whose layers to change
   * @param order name of the order as in a survey file: {@code east-first} or {@code as-defined}
   * @param where where it was given, for messages
   * @throws MeadowmarkException if no layer has the role or the order is not known
   */
  public SurveyDraft withAxisOrder(LayerRole role, String order, String where) {
    var checked = SurveyFile.axisOrder(order, where);
    return withEach(role, where, layer -> layer.withAxisOrder(checked));
  }

  /**
   * {@return the same survey with a property mapped to an attribute in the layers of a role}
   *
   * @param role whose layers to change
   * @param property name of a {@link Field} as in a survey file
   * @param attribute name of the attribute in the files; whether they have it is found out when
   *     they are read
   * @param where where it was given, for messages
   * @throws MeadowmarkException if no layer has the role or there is no such property
   */
  public SurveyDraft withAttribute(
      LayerRole role, String property, String attribute, String where) {
    for (Field field : Field.values()) {
      if (field.key().equals(property)) {
        return withEach(role, where, layer -> layer.withAttribute(field, attribute));
      }
    }
    throw new MeadowmarkException(
        where
            + ": unknown property '"
            + property
            + "'; "
            + NearNames.advice(property, SurveyFile.fieldKeys()));
  }

  /**
   * {@return the same survey with another unit of width and depth in the layers of a role}
   *
   * @param role whose layers to change
   * @param unit name of a {@link LengthUnit} as in a survey file
   * @param where where it was given, for messages
   * @throws MeadowmarkException if no layer has the role or there is no such unit
   */
  public SurveyDraft withWidthUnit(LayerRole role, String unit, String where) {
    LengthUnit checked;
    try {
      checked = LengthUnit.ofKey(unit);
    } catch (MeadowmarkException e) {
      throw new MeadowmarkException(where + ": " + e.getMessage(), e);
    }
    return withEach(role, where, layer -> layer.withWidthUnit(checked));
  }

  /**
   * {@return the survey, complete}
   *
   * @param parameters defaults and limits
   * @param tables what causes and species there are
   * @throws MeadowmarkException if scars or beds are missing, a parameter is wrong, or a value is
   *     mapped to a cause or species that is not in the tables
   */
  public SurveyDefinition define(ParametersTable parameters, ReferenceTables tables) {
    require(LayerRole.SCARS);
    require(LayerRole.BEDS);
    for (LayerSource layer : layers) {
      checkWords(layer, Field.CAUSE, tables.causes().keySet());
      checkWords(layer, Field.SPECIES, tables.species().keySet());
      for (Field note : List.of(Field.MUCK, Field.GRAZED, Field.SCARRED_AGAIN)) {
        checkWords(layer, note, List.of("yes", "no"));
      }
    }
    Parameters chosen = parameters.parameters(settings);
    for (String species : chosen.recovery().observedRecoveryYears().keySet()) {
      if (!tables.species().containsKey(species)) {
        throw new MeadowmarkException(
            file.map(f -> f + ": ").orElse("")
                + "observed_recovery_years: '"
                + species
                + "' is no species; "
                + NearNames.advice(species, tables.species().keySet()));
      }
    }
    List<LayerSource> ordered =
        layers.stream().sorted(Comparator.comparing(LayerSource::role)).toList();
    return new SurveyDefinition(
        name.orElseGet(this::folderName), date, file, ordered, chosen, facts);
  }

  private String folderName() {
    return file.map(f -> f.toAbsolutePath().normalize().getParent())
        .map(Path::getFileName)
        .map(Path::toString)
        .orElse(UNNAMED);
  }

  private void require(LayerRole role) {
    if (layers.stream().noneMatch(layer -> layer.role() == role)) {
      throw new MeadowmarkException(
          file.map(f -> f + ": ").orElse("")
              + "no "
              + role.key()
              + " given; name the file with --"
              + role.key()
              + " or with 'file' under [layers."
              + role.key()
              + "] in a survey file");
    }
  }

  private void checkWords(LayerSource layer, Field field, Collection<String> keys) {
    for (Map.Entry<String, String> word :
        layer.valueNames().getOrDefault(field, Map.of()).entrySet()) {
      if (!keys.contains(word.getValue())) {
        throw new MeadowmarkException(
            file.map(f -> f + ": ").orElse("")
                + "layers."
                + layer.role().key()
                + ".values."
                + field.key()
                + "."
                + word.getKey()
                + ": '"
                + word.getValue()
                + "' is no "
                + field.key()
                + "; "
                + NearNames.advice(word.getValue(), keys));
      }
    }
  }

  private SurveyDraft withEach(LayerRole role, String where, UnaryOperator<LayerSource> change) {
    if (layers.stream().noneMatch(layer -> layer.role() == role)) {
      throw new MeadowmarkException(
          where + ": the survey has no layer of " + role.key() + "; name its file first");
    }
    List<LayerSource> changed =
        layers.stream().map(l -> l.role() == role ? change.apply(l) : l).toList();
    return new SurveyDraft(name, date, file, changed, settings, facts);
  }
}
