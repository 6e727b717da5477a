package org.meadowmark.core.read;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Dates written as text, year first (ISO 8601), in the spellings that files have. */
public final class DateText {
  private static final Pattern DATE = Pattern.compile("([0-9]{4})([-/])([0-9]{2})\\2([0-9]{2})");
  private static final int DATE_LENGTH = 10;

  private DateText() {}

  /**
   * {@return the date if the whole text is one: {@code 2024-06-30} or {@code 2024/06/30}}
   *
   * @param text the text, without blanks around it
   */
  public static Optional<LocalDate> date(String text) {
    Matcher parts = DATE.matcher(text);
    return parts.matches() ? of(parts.group(1), parts.group(3), parts.group(4)) : Optional.empty();
  }

  /**
   * {@return the date at the start of a date and time, such as {@code 2024-06-30T12:00:00Z}}
   *
   * @param text a date, with a time behind it or without
   */
  public static Optional<LocalDate> dateOfDateTime(String text) {
    boolean longer =
        text.length() > DATE_LENGTH
            && (text.charAt(DATE_LENGTH) == 'T' || text.charAt(DATE_LENGTH) == ' ');
    return date(longer ? text.substring(0, DATE_LENGTH) : text);
  }

  /**
   * {@return the date of three numbers, if there is one}
   *
   * @param year year in digits
   * @param month month in digits, 1–12
   * @param day day of the month in digits
   */
  public static Optional<LocalDate> of(String year, String month, String day) {
    try {
      return Optional.of(
          LocalDate.of(Integer.parseInt(year), Integer.parseInt(month), Integer.parseInt(day)));
    } catch (NumberFormatException | DateTimeException e) {
      return Optional.empty();
    }
  }
}
