package org.meadowmark.core.survey;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.meadowmark.core.model.BoundedFile;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.PlainText;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.survey.LayerSource.GeometryColumns;

/**
 * Reads a survey file: <a href="https://toml.io/en/v1.0.0">TOML 1.0</a>, UTF-8.
 *
 * <p>Keys that are not known are refused, so that a misspelt one cannot pass unseen. Relative paths
 * start at the survey file's folder. Whether the layers' files exist is found out when they are
 * read.
 */
public final class SurveyFile {
  /** Name of the survey file in a survey folder. */
  public static final String NAME = "survey.toml";

  static final List<String> TOP_KEYS = List.of("survey", "layers", "parameters");
  static final List<String> SURVEY_KEYS =
      List.of("name", "date", "method", "effort_hours", "secchi_depth_m");
  static final List<String> LAYER_KEYS =
      List.of(
          "file",
          "layer",
          "crs",
          "axis_order",
          "width_unit",
          "wkt_column",
          "x_column",
          "y_column",
          "attributes",
          "values");
  static final Map<String, AxisOrder> AXIS_ORDERS =
      Map.of("east-first", AxisOrder.EAST_FIRST, "as-defined", AxisOrder.AS_DEFINED);

  private static final int MOST_BYTES = 1_000_000;
  private static final int LONGEST_QUOTE = 120;
  private static final String DUPLICATE_KEY = "Duplicate key";
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private final Path file;
  private final String label;

  private SurveyFile(Path file) {
    this.file = file;
    this.label = file.toString();
  }

  /**
   * Reads a survey file and checks it as a whole.
   *
   * @param path the file, or a folder that holds a {@value #NAME}
   * @param parameters defaults and limits
   * @param tables what causes and species there are
   * @return the survey, complete
   * @throws MeadowmarkException if the file cannot be read or anything in it is not allowed
   */
  public static SurveyDefinition read(
      Path path, ParametersTable parameters, ReferenceTables tables) {
    return draft(path).define(parameters, tables);
  }

  /**
   * Reads a survey file that more options are laid over.
   *
   * @param path the file, or a folder that holds a {@value #NAME}
   * @return what the file says; whether the survey is complete is not looked at
   * @throws MeadowmarkException if the file cannot be read, is not TOML, or has a key or value that
   *     is not allowed
   */
  public static SurveyDraft draft(Path path) {
    Path file = Files.isDirectory(path) ? path.resolve(NAME) : path;
    return new SurveyFile(file).parse();
  }

  private SurveyDraft parse() {
    TomlTable root = new TomlTable(label, "", toml(text()));
    root.allow(TOP_KEYS);
    TomlTable survey = root.table("survey");
    survey.allow(SURVEY_KEYS);
    TomlTable layers = root.table("layers");
    layers.allow(Arrays.stream(LayerRole.values()).map(LayerRole::key).toList());
    List<LayerSource> sources = new ArrayList<>();
    for (LayerRole role : LayerRole.values()) {
      for (TomlTable layer : layers.tables(role.key())) {
        sources.add(layer(role, layer));
      }
    }
    return new SurveyDraft(
        survey.text("name"),
        date(survey),
        Optional.of(file),
        sources,
        settings(root),
        facts(survey));
  }

  private String text() {
    try {
      String text = BoundedFile.text(file, MOST_BYTES);
      return !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
    } catch (NoSuchFileException e) {
      throw new MeadowmarkException(
          label + ": there is no such survey file; give a survey file or a folder with a " + NAME,
          e);
    } catch (BoundedFile.TooLongException e) {
      throw new MeadowmarkException(
          label + ": is " + e.getMessage() + "; give a survey file, not a layer", e);
    } catch (CharacterCodingException e) {
      throw new MeadowmarkException(label + ": is not UTF-8; save it as UTF-8", e);
    } catch (IOException e) {
      throw new MeadowmarkException(
          label + ": cannot be read (" + e.getMessage() + "); check the file", e);
    }
  }

  private JsonNode toml(String text) {
    try {
      return new TomlMapper().readTree(text);
    } catch (JsonProcessingException e) {
      throw new MeadowmarkException(label + ": " + problem(e, text), e);
    }
  }

  private static String problem(JsonProcessingException e, String text) {
    String what = e.getOriginalMessage().lines().findFirst().orElse("").strip();
    if (e.getLocation() == null) {
      return "is not TOML: " + what + "; correct the file";
    }
    int line = e.getLocation().getLineNr();
    // The parser meets a duplicate when its line is over, at the start of the next one.
    if (what.equals(DUPLICATE_KEY) && e.getLocation().getColumnNr() == 1) {
      line--;
    }
    String content = text.lines().skip(Math.max(0, line - 1L)).findFirst().orElse("").strip();
    return "line "
        + line
        + ": is not TOML: "
        + what
        + (content.isEmpty() ? "" : " in: " + PlainText.line(content, LONGEST_QUOTE))
        + "; correct the line";
  }

  private static Optional<LocalDate> date(TomlTable survey) {
    Optional<String> text = survey.text("date");
    try {
      return text.map(LocalDate::parse);
    } catch (DateTimeParseException e) {
      throw survey.error("date", "'" + text.get() + "' is no date", "write it like 2026-06-14");
    }
  }

  private static SurveyFacts facts(TomlTable survey) {
    return new SurveyFacts(
        survey.text("method"),
        survey.positiveNumber("effort_hours"),
        survey.positiveNumber("secchi_depth_m"));
  }

  private static List<Setting> settings(TomlTable root) {
    TomlTable parameters = root.table("parameters");
    return parameters.keys().stream()
        .map(key -> new Setting(key, parameters.values(key), parameters.where(key)))
        .toList();
  }

  private LayerSource layer(LayerRole role, TomlTable layer) {
    layer.allow(LAYER_KEYS);
    String fileLabel =
        layer
            .text("file")
            .orElseThrow(() -> layer.error("file", "is missing", "name the layer's file"));
    return new LayerSource(
        role,
        resolve(layer, fileLabel),
        fileLabel,
        layer.text("layer"),
        layer.text("crs").map(code -> CrsCode.of(code, layer.where("crs"))),
        axisOrder(layer),
        attributes(layer.table("attributes")),
        valueNames(layer.table("values")),
        widthUnit(layer),
        geometryColumns(layer));
  }

  private Path resolve(TomlTable layer, String fileLabel) {
    try {
      return file.resolveSibling(fileLabel);
    } catch (InvalidPathException e) {
      throw layer.error("file", "is no path (" + e.getReason() + ")", "correct it");
    }
  }

  private static AxisOrder axisOrder(TomlTable layer) {
    return layer
        .text("axis_order")
        .map(t -> axisOrder(t, layer.where("axis_order")))
        .orElse(AxisOrder.EAST_FIRST);
  }

  static AxisOrder axisOrder(String text, String where) {
    AxisOrder order = AXIS_ORDERS.get(text);
    if (order == null) {
      throw new MeadowmarkException(
          where
              + ": '"
              + text
              + "' is no axis order; "
              + NearNames.advice(text, List.of("east-first", "as-defined")));
    }
    return order;
  }

  private static LengthUnit widthUnit(TomlTable layer) {
    Optional<String> text = layer.text("width_unit");
    try {
      return text.map(LengthUnit::ofKey).orElse(LengthUnit.METRE);
    } catch (MeadowmarkException e) {
      throw new MeadowmarkException(layer.where("width_unit") + ": " + e.getMessage(), e);
    }
  }

  private static GeometryColumns geometryColumns(TomlTable layer) {
    GeometryColumns columns =
        new GeometryColumns(
            layer.text("wkt_column"), layer.text("x_column"), layer.text("y_column"));
    if (columns.wkt().isPresent() && (columns.x().isPresent() || columns.y().isPresent())) {
      throw layer.error(
          "wkt_column", "stands beside x_column or y_column", "give the one or the other two");
    }
    if (columns.x().isPresent() != columns.y().isPresent()) {
      String there = columns.x().isPresent() ? "x_column" : "y_column";
      throw layer.error(there, "stands alone", "give both x_column and y_column");
    }
    return columns;
  }

  private static Map<Field, String> attributes(TomlTable attributes) {
    attributes.allow(fieldKeys());
    Map<Field, String> mapped = new EnumMap<>(Field.class);
    for (Field field : Field.values()) {
      attributes.text(field.key()).ifPresent(name -> mapped.put(field, name));
    }
    return mapped;
  }

  private static Map<Field, Map<String, String>> valueNames(TomlTable values) {
    values.allow(fieldKeys());
    Map<Field, Map<String, String>> byField = new EnumMap<>(Field.class);
    for (Field field : Field.values()) {
      TomlTable words = values.table(field.key());
      Map<String, String> names = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
      for (String word : words.keys()) {
        if (names.put(word, words.text(word).orElseThrow()) != null) {
          throw words.error(word, "differs from another word in case only", "keep one of them");
        }
      }
      if (!names.isEmpty()) {
        byField.put(field, Collections.unmodifiableMap(names));
      }
    }
    return byField;
  }

  static List<String> fieldKeys() {
    return Arrays.stream(Field.values()).map(Field::key).toList();
  }
}
