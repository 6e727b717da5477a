package org.meadowmark.core.write.record;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import org.meadowmark.core.model.Finding;

/** Parts that the records of all kinds of runs have. */
final class RunJson {
  private static final double MILLIS = 1000;

  private RunJson() {}

  static void putFiles(ArrayNode array, List<FileDigest> files) {
    for (FileDigest file : files) {
      array
          .addObject()
          .put("file", file.file())
          .put("bytes", file.bytes())
          .put("sha256", file.sha256());
    }
  }

  static void putFindings(ArrayNode array, Collection<Finding> findings) {
    FindingCounts.of(findings)
        .forEach(
            count ->
                array
                    .addObject()
                    .put("code", lower(count.code()))
                    .put("level", lower(count.level()))
                    .put("treatment", lower(count.treatment()))
                    .put("count", count.count()));
  }

  static void putRun(ObjectNode node, RunFacts facts) {
    node.put("started", facts.started().toString());
    node.put("ended", facts.ended().toString());
    node.put("wall_seconds", seconds(Duration.between(facts.started(), facts.ended())));
    ArrayNode stages = node.putArray("stages");
    for (StageUse stage : facts.stages()) {
      stages
          .addObject()
          .put("stage", stage.stage())
          .put("wall_seconds", seconds(stage.wall()))
          .put("peak_heap_bytes", stage.peakHeapBytes());
    }
    node.put("java", facts.versions().java());
    ObjectNode libraries = node.putObject("libraries");
    new TreeMap<>(facts.versions().libraries()).forEach(libraries::put);
  }

  private static double seconds(Duration duration) {
    return duration.toMillis() / MILLIS;
  }

  private static String lower(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
