package org.meadowmark.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.meadowmark.core.survey.SurveyDraft.Place;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Understands {@code FILE} and {@code FILE#LAYER}. A file whose own name has a # is found too. */
final class LayerPlace implements ITypeConverter<Place> {
  private static final char SEPARATOR = '#';

  @Override
  public Place convert(String text) {
    int end = text.lastIndexOf(SEPARATOR);
    if (end < 0 || Files.exists(Path.of(text))) {
      return place(text, Optional.empty());
    }
    String layer = text.substring(end + 1);
    if (layer.isBlank()) {
      throw new TypeConversionException("'" + text + "' names no layer after the #");
    }
    return place(text.substring(0, end), Optional.of(layer));
  }

  private static Place place(String file, Optional<String> layer) {
    if (file.isBlank()) {
      throw new TypeConversionException("no file is named");
    }
    return new Place(Path.of(file), file, layer);
  }
}
