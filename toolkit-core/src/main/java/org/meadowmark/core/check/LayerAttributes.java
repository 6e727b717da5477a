package org.meadowmark.core.check;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.model.PlainText;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.survey.Field;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.LengthUnit;

/**
 * Values of a layer's features by property.
 *
 * <p>A property is read from the attribute that the survey maps to it, else from an attribute of
 * the property's usual name: {@code id}, {@code name}, {@code cause}, {@code width_m} or {@code
 * width}, {@code date}, {@code species}, {@code texture}, {@code depth_m} or {@code depth}, {@code
 * excavation_m} or {@code excavation}, {@code muck}, {@code grazed} or {@code grazing}, {@code
 * scarred_again} or {@code rescarred}. Names compare exactly first, then without case. {@code
 * width_m}, {@code depth_m} and {@code excavation_m}, found by their usual names, are in metres
 * whatever unit the survey states.
 */
final class LayerAttributes {
  /** Longest text of a value that is kept whole, in characters. */
  static final int LONGEST_TEXT = 200;

  private static final Map<Field, List<String>> USUAL_NAMES =
      Map.ofEntries(
          Map.entry(Field.ID, List.of("id")),
          Map.entry(Field.NAME, List.of("name")),
          Map.entry(Field.CAUSE, List.of("cause")),
          Map.entry(Field.WIDTH, List.of("width_m", "width")),
          Map.entry(Field.DATE, List.of("date")),
          Map.entry(Field.SPECIES, List.of("species")),
          Map.entry(Field.TEXTURE, List.of("texture")),
          Map.entry(Field.DEPTH, List.of("depth_m", "depth")),
          Map.entry(Field.EXCAVATION, List.of("excavation_m", "excavation")),
          Map.entry(Field.MUCK, List.of("muck")),
          Map.entry(Field.GRAZED, List.of("grazed", "grazing")),
          Map.entry(Field.SCARRED_AGAIN, List.of("scarred_again", "rescarred")));

  private final Map<Field, String> columns = new EnumMap<>(Field.class);
  private final Map<Field, String> lacking = new EnumMap<>(Field.class);
  private final Map<Field, Map<String, String>> words = new EnumMap<>(Field.class);
  private final Map<Field, LengthUnit> units = new EnumMap<>(Field.class);

  LayerAttributes(LayerSource source, LayerHeader header) {
    for (Field field : Field.values()) {
      String mapped = source.attributes().get(field);
      Optional<String> column =
          mapped != null
              ? find(mapped, header.attributeNames())
              : USUAL_NAMES.get(field).stream()
                  .flatMap(name -> find(name, header.attributeNames()).stream())
                  .findFirst();
      column.ifPresent(name -> columns.put(field, name));
      if (mapped != null && column.isEmpty()) {
        lacking.put(field, mapped);
      }
      boolean statesMetres =
          mapped == null
              && column.filter(name -> name.toLowerCase(Locale.ROOT).endsWith("_m")).isPresent();
      units.put(field, statesMetres ? LengthUnit.METRE : source.widthUnit());
      Map<String, String> byValue = new HashMap<>();
      source
          .valueNames()
          .getOrDefault(field, Map.of())
          .forEach((value, word) -> byValue.put(fold(value), word));
      words.put(field, byValue);
    }
  }

  /** Attributes that the survey maps and the layer does not have, by property. */
  Map<Field, String> lacking() {
    return lacking;
  }

  boolean has(Field field) {
    return columns.containsKey(field);
  }

  /**
   * The value as text, without spaces around it, with blanks for control characters, and cut where
   * it is longer than {@value #LONGEST_TEXT} characters; empty where there is none.
   */
  Optional<String> text(Field field, Map<String, Object> values) {
    return value(field, values)
        .map(LayerAttributes::asText)
        .map(text -> PlainText.line(text, LONGEST_TEXT).strip())
        .filter(text -> !text.isEmpty());
  }

  /** Whether {@link #text} gives something else than the layer holds. */
  boolean isChanged(Field field, Map<String, Object> values) {
    return value(field, values)
        .filter(String.class::isInstance)
        .map(value -> ((String) value).strip())
        .filter(text -> text.length() > LONGEST_TEXT || !PlainText.isLine(text))
        .isPresent();
  }

  /**
   * The toolkit's word for the value: the one the survey gives for it, else the value itself; both
   * in lower case.
   */
  Optional<String> word(Field field, Map<String, Object> values) {
    return text(field, values).map(text -> fold(words.get(field).getOrDefault(fold(text), text)));
  }

  /**
   * The value as a length in metres.
   *
   * @throws NumberFormatException if there is a value that is not a finite number
   */
  OptionalDouble metres(Field field, Map<String, Object> values) {
    Optional<Object> value = value(field, values).filter(v -> !asText(v).isEmpty());
    if (value.isEmpty()) {
      return OptionalDouble.empty();
    }
    double number = value.get() instanceof Number n ? n.doubleValue() : number(asText(value.get()));
    if (!Double.isFinite(number)) {
      throw new NumberFormatException(asText(value.get()));
    }
    return OptionalDouble.of(units.get(field).toMetres(number));
  }

  /** Reading a number takes time with the square of its digits, so that a longer text is none. */
  private static double number(String text) {
    if (text.length() > LONGEST_TEXT) {
      throw new NumberFormatException("too long");
    }
    return new BigDecimal(text).doubleValue();
  }

  /**
   * The value as a date: a date, ISO text with or without a time, a year and month (its first day)
   * or a year (1 January).
   *
   * @throws DateTimeException if there is a value that is not a date
   */
  Optional<LocalDate> date(Map<String, Object> values) {
    Optional<Object> value = value(Field.DATE, values);
    if (value.isPresent() && value.get() instanceof LocalDate date) {
      return Optional.of(date);
    }
    return value.map(LayerAttributes::asText).filter(t -> !t.isEmpty()).map(LayerAttributes::date);
  }

  private static LocalDate date(String text) {
    if (text.length() > 10 && (text.charAt(10) == 'T' || text.charAt(10) == ' ')) {
      return LocalDate.parse(text.substring(0, 10));
    }
    return switch (text.length()) {
      case 4 -> LocalDate.of(year(text), 1, 1);
      case 7 -> YearMonth.parse(text).atDay(1);
      case 8 -> LocalDate.parse(text, DateTimeFormatter.BASIC_ISO_DATE);
      default -> LocalDate.parse(text);
    };
  }

  private static int year(String text) {
    if (!text.chars().allMatch(c -> c >= '0' && c <= '9')) {
      throw new DateTimeException("not a year: " + text);
    }
    return Integer.parseInt(text);
  }

  private Optional<Object> value(Field field, Map<String, Object> values) {
    String column = columns.get(field);
    return column == null ? Optional.empty() : Optional.ofNullable(values.get(column));
  }

  private static Optional<String> find(String name, List<String> names) {
    if (names.contains(name)) {
      return Optional.of(name);
    }
    return names.stream().filter(candidate -> candidate.equalsIgnoreCase(name)).findFirst();
  }

  private static String asText(Object value) {
    if (value instanceof Double d && d == Math.rint(d) && Math.abs(d) < 1e15) {
      return Long.toString(d.longValue());
    }
    return value.toString().strip();
  }

  private static String fold(String text) {
    return text.strip().toLowerCase(Locale.ROOT);
  }
}
