package org.meadowmark.core.write.folder;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.UUID;

/** Names of the hidden folders beside an output folder. */
final class HiddenNames {
  /** What a hidden folder holds. */
  enum Kind {
    /** A new output, not complete yet. */
    PART(".part"),
    /** An earlier output, set aside while the new one takes its place. */
    OLD(".old");

    private final String ending;

    Kind(String ending) {
      this.ending = ending;
    }
  }

  /**
   * A hidden folder.
   *
   * @param path where it is
   * @param kind what it holds
   * @param mark whose it is
   */
  record Hidden(Path path, Kind kind, RunMark mark) {}

  private static final String PROGRAM = ".meadowmark-";

  /** File systems allow 255 bytes a name; the mark and the endings take less than a hundred. */
  private static final int LONGEST_NAME_KEPT_BYTES = 120;

  private final Path target;
  private final String start;

  HiddenNames(Path target) {
    this.target = target;
    String name = target.getFileName().toString();
    byte[] bytes = name.getBytes(StandardCharsets.UTF_8);
    String kept =
        bytes.length <= LONGEST_NAME_KEPT_BYTES ? name : UUID.nameUUIDFromBytes(bytes).toString();
    this.start = "." + kept + PROGRAM;
  }

  Path path(Kind kind, RunMark mark) {
    return target.resolveSibling(start + mark.text() + kind.ending);
  }

  /** Reads a name of the target's own folder; empty if it is none of ours for this target. */
  Optional<Hidden> parse(Path path) {
    String name = path.getFileName().toString();
    for (Kind kind : Kind.values()) {
      if (name.startsWith(start)
          && name.endsWith(kind.ending)
          && name.length() > start.length() + kind.ending.length()) {
        String text = name.substring(start.length(), name.length() - kind.ending.length());
        return RunMark.parse(text).map(mark -> new Hidden(path, kind, mark));
      }
    }
    return Optional.empty();
  }
}
