package org.meadowmark.cluster.folder;

import java.io.IOException;
import java.io.Serializable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.FileUtil;
import org.apache.spark.util.SerializableConfiguration;
import org.meadowmark.core.assessment.AssessmentWriter;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.record.FileDigest;
import org.meadowmark.core.write.record.StageMeter;
import org.meadowmark.core.write.summary.Summary;

/**
 * Writes all files of a bay, on the machine that assessed it, and copies them to the file system of
 * the output.
 *
 * <p>Each try of a task writes to a place of its own, which it names. The machine that submitted
 * takes the places that tasks which succeeded named, and removes the others, so that a task that
 * failed half-way, or that ran twice, leaves nothing.
 */
public class BayFolders implements Serializable {
  /** Folder of the output with a folder a bay. */
  public static final String FOLDER = "bays";

  private static final long serialVersionUID = 1L;

  private final String tries;
  private final SerializableConfiguration configuration;
  private final LinkedHashMap<String, String> options;
  private final String toolVersion;
  private final Instant started;

  /**
   * A writer that travels to the workers.
   *
   * @param tries address of the folder where tries write
   * @param configuration of the session, to reach it
   * @param options options as the user gave them, for the run records
   * @param toolVersion version of the program, for the run records
   * @param started when the run began
   */
  public BayFolders(
      String tries,
      Configuration configuration,
      Map<String, String> options,
      String toolVersion,
      Instant started) {
    this.tries = tries;
    this.configuration = new SerializableConfiguration(configuration);
    this.options = new LinkedHashMap<>(options);
    this.toolVersion = toolVersion;
    this.started = started;
  }

  /**
   * Writes the folder of a bay.
   *
   * @param bay its name
   * @param assessed the bay
   * @param inputs digests of what it was read from
   * @param meter has metered the stages before
   * @return address of the folder, to be taken when the task has succeeded
   * @throws OutputFailedException if it cannot be written
   */
  public String write(
      String bay, AssessedSurvey assessed, List<FileDigest> inputs, StageMeter meter) {
    try {
      Path local = Files.createTempDirectory("meadowmark-bay-");
      try {
        Map<String, String> ofBay = new LinkedHashMap<>(options);
        ofBay.put("bay", bay);
        new AssessmentWriter(inputs, ofBay, toolVersion, started, meter)
            .write(assessed, Summary.text(assessed), local);
        return copy(local);
      } finally {
        FileUtil.fullyDelete(local.toFile());
      }
    } catch (IOException e) {
      throw new OutputFailedException(
          "bay "
              + bay
              + ": its folder cannot be written ("
              + e.getMessage()
              + "); check space and permissions, also of the temporary folder of each machine",
          e);
    }
  }

  private String copy(Path local) throws IOException {
    org.apache.hadoop.fs.Path place =
        new org.apache.hadoop.fs.Path(tries, UUID.randomUUID().toString());
    // One of its own, because it is changed: the files of a bay need no checksum file each.
    try (FileSystem files = FileSystem.newInstance(place.toUri(), configuration.value())) {
      files.setWriteChecksum(false);
      files.copyFromLocalFile(false, true, new org.apache.hadoop.fs.Path(local.toUri()), place);
    }
    return place.toString();
  }
}
