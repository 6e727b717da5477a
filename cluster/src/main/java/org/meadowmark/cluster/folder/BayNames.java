package org.meadowmark.cluster.folder;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Collection;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.meadowmark.core.model.Ids;

/**
 * Names of folders for bays, whatever the bays are called: never a way out of the folder, never
 * hidden, the same on all usual systems, and different for different bays.
 */
public final class BayNames {
  private static final int LONGEST_BYTES = 100;
  private static final String START = "bay";
  private static final Pattern NOT_PLAIN = Pattern.compile("[^\\p{L}\\p{M}\\p{N} ._-]");
  private static final Pattern DOTS_AND_BLANKS_AT_THE_END = Pattern.compile("[. ]+$");

  /** Names that one system keeps for devices, with or without an ending. */
  private static final Pattern DEVICE =
      Pattern.compile("(con|prn|aux|nul|com\\d|lpt\\d)(\\..*)?", Pattern.CASE_INSENSITIVE);

  private BayNames() {}

  /**
   * Folder names by bay. Letters, digits, blanks, dots and dashes are kept and others become
   * dashes; where two bays would have one name, or names that differ in case only, the later in
   * order gets a number.
   *
   * @param bays names of bays, in any order
   * @return a name for each, the same for the same bays
   */
  public static Map<String, String> of(Collection<String> bays) {
    TreeSet<String> ordered = new TreeSet<>(Ids.ORDER);
    ordered.addAll(bays);
    Set<String> taken = new HashSet<>();
    Map<String, String> names = new TreeMap<>(Ids.ORDER);
    for (String bay : ordered) {
      String plain = plain(bay);
      String name = plain;
      for (int number = 2; !taken.add(name.toLowerCase(Locale.ROOT)); number++) {
        name = plain + "-" + number;
      }
      names.put(bay, name);
    }
    return names;
  }

  private static String plain(String bay) {
    String composed = Normalizer.normalize(bay, Normalizer.Form.NFC);
    String cut = cut(NOT_PLAIN.matcher(composed).replaceAll("-").strip());
    String name = DOTS_AND_BLANKS_AT_THE_END.matcher(cut).replaceAll("");
    boolean startsPlain = !name.isEmpty() && Character.isLetterOrDigit(name.codePointAt(0));
    return startsPlain && !DEVICE.matcher(name).matches() ? name : START + name;
  }

  private static String cut(String name) {
    StringBuilder kept = new StringBuilder();
    int bytes = 0;
    for (int codePoint : name.codePoints().toArray()) {
      String next = Character.toString(codePoint);
      bytes += next.getBytes(StandardCharsets.UTF_8).length;
      if (bytes > LONGEST_BYTES) {
        break;
      }
      kept.append(next);
    }
    return kept.toString();
  }
}
