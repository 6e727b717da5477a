package org.meadowmark.core.write.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.survey.SurveyDefinition;

/**
 * Sees whether the files of a survey change while they are read: figures would then be of a state
 * that never was, and the digests in the record those of other files than were read.
 *
 * <p>A change shows in the size, the time of the last change, or the identity of a file; a file
 * lock would not help, because many drives and programs know none.
 */
public final class InputWatch {
  /** What a change of a file shows in. */
  private record Stamp(long bytes, long changedNanos, Optional<String> identity) {}

  private final SurveyDefinition definition;
  private final Map<String, Optional<Stamp>> before;

  private InputWatch(SurveyDefinition definition) {
    this.definition = definition;
    this.before = stamps();
  }

  /**
   * Begins before the first file is read.
   *
   * @param definition the survey whose files are about to be read
   * @return a watch that knows how the files were at this moment
   */
  public static InputWatch begin(SurveyDefinition definition) {
    return new InputWatch(definition);
  }

  /**
   * Digests of the files, once they were read.
   *
   * @return digests by label, each of the state that was read
   * @throws MeadowmarkException if a file changed since the watch began, or cannot be read
   */
  public List<FileDigest> digests() {
    requireUnchanged();
    List<FileDigest> digests = InputFiles.digests(definition);
    requireUnchanged();
    return digests;
  }

  /**
   * Ends the watch of files whose digests are not wanted.
   *
   * @throws MeadowmarkException if a file changed since the watch began
   */
  public void requireUnchanged() {
    Map<String, Optional<Stamp>> now = stamps();
    before.forEach(
        (label, stamp) -> {
          Optional<Stamp> after = now.getOrDefault(label, Optional.empty());
          if (stamp.isPresent() && after.isEmpty()) {
            throw new MeadowmarkException(
                label + ": was removed while it was read; put it back and run again");
          }
          if (!stamp.equals(after)) {
            throw changed(label);
          }
        });
    now.keySet().stream()
        .filter(label -> !before.containsKey(label))
        .findFirst()
        .ifPresent(
            label -> {
              throw changed(label);
            });
  }

  private static MeadowmarkException changed(String label) {
    return new MeadowmarkException(
        label
            + ": was changed while it was read; save and close it in other programs and run again");
  }

  private Map<String, Optional<Stamp>> stamps() {
    Map<String, Optional<Stamp>> stamps = new TreeMap<>();
    InputFiles.paths(definition).forEach((label, path) -> stamps.put(label, stamp(path)));
    return stamps;
  }

  private static Optional<Stamp> stamp(Path path) {
    try {
      BasicFileAttributes file = Files.readAttributes(path, BasicFileAttributes.class);
      return Optional.of(
          new Stamp(
              file.size(),
              file.lastModifiedTime().to(TimeUnit.NANOSECONDS),
              Optional.ofNullable(file.fileKey()).map(Objects::toString)));
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}
