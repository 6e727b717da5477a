package org.meadowmark.cli;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Understands a date such as 2026-06-14. */
final class DateConverter implements ITypeConverter<LocalDate> {
  @Override
  public LocalDate convert(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw new TypeConversionException("'" + text + "' is no date; write it like 2026-06-14");
    }
  }
}
