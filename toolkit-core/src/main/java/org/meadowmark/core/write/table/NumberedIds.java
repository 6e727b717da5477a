package org.meadowmark.core.write.table;

import java.util.Comparator;
import org.meadowmark.core.model.Ids;

/**
 * Order of ids that the toolkit gives itself: a letter and a number, {@code P2} before {@code P10}.
 */
final class NumberedIds {
  static final Comparator<String> ORDER =
      Comparator.comparing(NumberedIds::prefix)
          .thenComparing(id -> id.substring(prefix(id).length()), Ids.ORDER);

  private NumberedIds() {}

  private static String prefix(String id) {
    int end = 0;
    while (end < id.length() && Character.isLetter(id.charAt(end))) {
      end++;
    }
    return id.substring(0, end);
  }
}
