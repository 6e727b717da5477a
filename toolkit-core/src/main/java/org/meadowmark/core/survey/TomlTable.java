package org.meadowmark.core.survey;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.model.MeadowmarkException;

/** A table of a survey file that knows its path, so that messages can say where a key stands. */
final class TomlTable {
  private final String fileLabel;
  private final String path;
  private final JsonNode node;

  TomlTable(String fileLabel, String path, JsonNode node) {
    this.fileLabel = fileLabel;
    this.path = path;
    this.node = node;
  }

  /**
   * Refuses every key that is not among the known.
   *
   * @throws MeadowmarkException if there is one
   */
  void allow(List<String> known) {
    for (String key : keys()) {
      if (!known.contains(key)) {
        throw new MeadowmarkException(
            where(key) + ": unknown key; " + NearNames.advice(key, known));
      }
    }
  }

  List<String> keys() {
    List<String> keys = new ArrayList<>();
    node.fieldNames().forEachRemaining(keys::add);
    return keys;
  }

  /** Text of a key, without blanks around it; empty where the key is not there. */
  Optional<String> text(String key) {
    JsonNode value = node.get(key);
    if (value == null) {
      return Optional.empty();
    }
    if (!value.isTextual()) {
      throw error(key, "is " + kind(value) + ", not text", "put it in quotes");
    }
    String text = value.textValue().strip();
    if (text.isEmpty()) {
      throw error(key, "is empty", "give a value or remove the key");
    }
    return Optional.of(text);
  }

  /** A number above 0; empty where the key is not there. */
  OptionalDouble positiveNumber(String key) {
    JsonNode value = node.get(key);
    if (value == null) {
      return OptionalDouble.empty();
    }
    if (!value.isNumber()) {
      throw error(key, "is " + kind(value) + ", not a number", "write it without quotes");
    }
    double number = value.doubleValue();
    if (!(number > 0) || Double.isInfinite(number)) {
      throw error(key, value.asText() + " is not above 0", "give a number above 0, or remove it");
    }
    return OptionalDouble.of(number);
  }

  /** Values of a key as text: one, or those of an array. */
  List<String> values(String key) {
    JsonNode value = node.get(key);
    if (value.isObject()) {
      throw error(key, "is a table, not a value", "give a value");
    }
    List<String> values = new ArrayList<>();
    for (JsonNode item : value.isArray() ? value : List.of(value)) {
      if (item.isContainerNode()) {
        throw error(key, "holds " + kind(item), "give plain values");
      }
      values.add(item.asText());
    }
    return values;
  }

  /** A table inside this one; an empty one where the key is not there. */
  TomlTable table(String key) {
    JsonNode value = node.get(key);
    if (value == null) {
      return new TomlTable(fileLabel, pathOf(key), JsonNodeFactory.instance.objectNode());
    }
    if (!value.isObject()) {
      throw error(key, "is " + kind(value) + ", not a table", "write [" + pathOf(key) + "]");
    }
    return new TomlTable(fileLabel, pathOf(key), value);
  }

  /** The one table of a key, or those of an array of tables; none where the key is not there. */
  List<TomlTable> tables(String key) {
    JsonNode value = node.get(key);
    if (value == null || !value.isArray()) {
      return value == null ? List.of() : List.of(table(key));
    }
    List<TomlTable> tables = new ArrayList<>();
    for (JsonNode item : value) {
      String itemPath = pathOf(key) + "[" + (tables.size() + 1) + "]";
      if (!item.isObject()) {
        throw new MeadowmarkException(
            fileLabel
                + ": "
                + itemPath
                + ": is "
                + kind(item)
                + ", not a table; write [["
                + pathOf(key)
                + "]]");
      }
      tables.add(new TomlTable(fileLabel, itemPath, item));
    }
    return tables;
  }

  /** File and path of a key. */
  String where(String key) {
    return fileLabel + ": " + pathOf(key);
  }

  /** File and path of this table. */
  String where() {
    return path.isEmpty() ? fileLabel : fileLabel + ": " + path;
  }

  MeadowmarkException error(String key, String problem, String remedy) {
    return new MeadowmarkException(where(key) + ": " + problem + "; " + remedy);
  }

  private String pathOf(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  private static String kind(JsonNode value) {
    return switch (value.getNodeType()) {
      case OBJECT -> "a table";
      case ARRAY -> "an array";
      case NUMBER -> "a number";
      case BOOLEAN -> "true or false";
      default -> "text";
    };
  }
}
