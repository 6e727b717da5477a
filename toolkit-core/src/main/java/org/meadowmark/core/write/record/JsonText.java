package org.meadowmark.core.write.record;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;

/** JSON for people to read: two spaces, one line end on every system, keys in the order given. */
final class JsonText {
  private static final String LINE_END = "\n";
  private static final Separators SEPARATORS =
      Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER);
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private JsonText() {}

  static String of(JsonNode node) {
    DefaultIndenter indenter = new DefaultIndenter("  ", LINE_END);
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter(SEPARATORS)
            .withObjectIndenter(indenter)
            .withArrayIndenter(indenter);
    try {
      return MAPPER.writer(printer).writeValueAsString(node) + LINE_END;
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a tree of JSON nodes can always be written", e);
    }
  }
}
