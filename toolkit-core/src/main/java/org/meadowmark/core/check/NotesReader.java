package org.meadowmark.core.check;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.SiteNotes;
import org.meadowmark.core.survey.Field;

/**
 * Reads notes on the ground: yes or no, in a few usual spellings, or as the survey file translates
 * the layer's words.
 */
final class NotesReader {
  private static final Set<String> YES = Set.of("yes", "y", "true", "t", "1");
  private static final Set<String> NO = Set.of("no", "n", "false", "f", "0");

  private NotesReader() {}

  static SiteNotes of(
      LayerAttributes attributes, Map<String, Object> values, FeatureRemarks remarks) {
    return new SiteNotes(
        answer(Field.MUCK, attributes, values, remarks),
        answer(Field.GRAZED, attributes, values, remarks),
        answer(Field.SCARRED_AGAIN, attributes, values, remarks));
  }

  private static Optional<Boolean> answer(
      Field field, LayerAttributes attributes, Map<String, Object> values, FeatureRemarks remarks) {
    Optional<String> word = attributes.word(field, values);
    if (word.isEmpty() || YES.contains(word.get()) || NO.contains(word.get())) {
      return word.map(YES::contains);
    }
    remarks.kept(
        FindingCode.VALUE_UNREADABLE,
        String.format(
            Locale.ROOT,
            "%s '%s' is neither yes nor no",
            field.key(),
            attributes.text(field, values).orElse("")),
        "taken as not noted; write yes or no, or say in the survey file what the layer's words"
            + " mean");
    return Optional.empty();
  }
}
