package org.meadowmark.core.write.record;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * How a run went, apart from its results.
 *
 * @param versions versions in use
 * @param options options as the user gave them, in order
 * @param started when it began
 * @param ended when the record was written
 * @param stages what each stage took
 */
public record RunFacts(
    Versions versions,
    Map<String, String> options,
    Instant started,
    Instant ended,
    List<StageUse> stages) {

  /**
   * Keeps copies of options and stages that cannot be changed, the options in their order.
   *
   * @param versions versions in use
   * @param options options as the user gave them, in order
   * @param started when it began
   * @param ended when the record was written
   * @param stages what each stage took
   * @throws NullPointerException if anything is null
   */
  public RunFacts {
    Objects.requireNonNull(versions, "versions");
    options = Collections.unmodifiableMap(new LinkedHashMap<>(options));
    Objects.requireNonNull(started, "started");
    Objects.requireNonNull(ended, "ended");
    stages = List.copyOf(stages);
  }
}
