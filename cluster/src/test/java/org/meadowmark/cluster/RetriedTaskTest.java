package org.meadowmark.cluster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.meadowmark.cluster.SharedSession.SPARK;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.hadoop.conf.Configuration;
import org.apache.spark.TaskContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.cluster.bay.BaysAssessment;
import org.meadowmark.cluster.bay.SurveySpec;
import org.meadowmark.cluster.folder.BayFolders;
import org.meadowmark.cluster.output.ClusterFolder;
import org.meadowmark.core.partition.PartSize;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyDraft;
import org.meadowmark.core.survey.SurveyFile;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.record.FileDigest;
import org.meadowmark.core.write.record.OutputFiles;
import org.meadowmark.core.write.record.RunRecord;
import org.meadowmark.core.write.record.StageMeter;

/** A task that fails after it wrote the folder of a bay is tried again: one whole folder comes. */
class RetriedTaskTest {
  @TempDir Path folder;

  private static final class FailsOnce extends BayFolders {
    private static final long serialVersionUID = 1L;

    FailsOnce(String tries, Configuration configuration) {
      super(tries, configuration, Map.of(), OneMachine.VERSION, Instant.now());
    }

    @Override
    public String write(
        String bay, AssessedSurvey assessed, List<FileDigest> inputs, StageMeter meter) {
      String place = super.write(bay, assessed, inputs, meter);
      if (TaskContext.get().attemptNumber() == 0) {
        throw new IllegalStateException("the machine is gone");
      }
      return place;
    }
  }

  @Test
  void oneWholeFolderComes() throws Exception {
    SmallSurvey.file(folder);
    SmallSurvey.layer(folder, "scars", SmallSurvey.UTM, SmallSurvey.SCAR);
    SmallSurvey.layer(folder, "beds", SmallSurvey.UTM, SmallSurvey.BED);
    SurveyDraft draft = SurveyFile.draft(folder);
    SurveyDefinition definition = draft.define(ParametersTable.bundled(), SurveySpec.tables());
    SurveySpec survey =
        new SurveySpec(
            draft, definition, FileDigest.of("survey.toml", folder.resolve("survey.toml")));
    Path output = folder.resolve("output");
    Configuration configuration = SPARK.sessionState().newHadoopConf();
    try (ClusterFolder opened = new ClusterFolder(output.toString(), false, configuration);
        BaysAssessment assessment =
            new BaysAssessment(
                SPARK,
                survey,
                "",
                Optional.empty(),
                PartSize.DEFAULT,
                Optional.of(new FailsOnce(opened.tries(), configuration)))) {
      Map<String, String> places = assessment.assess().folders();
      assertThat(places).containsOnlyKeys(SmallSurvey.NAME);
      assertThat(folder.resolve(".output.meadowmark-tries"))
          .as("the try that failed left its folder")
          .isDirectoryContaining(path -> !places.get(SmallSurvey.NAME).endsWith(name(path)));
      opened.take(places.get(SmallSurvey.NAME), "bays/Small");
      opened.commit();
    }
    assertThat(names(folder)).noneMatch(name -> name.contains("meadowmark"));
    assertThat(names(output)).containsExactly("bays");
    assertThat(names(output.resolve("bays"))).containsExactly("Small");
    Path bay = output.resolve("bays/Small");
    assertThat(OutputFiles.digests(bay))
        .extracting(FileDigest::file)
        .filteredOn(file -> !file.equals(RunRecord.FILE_NAME))
        .containsExactlyInAnyOrderElementsOf(RunRecord.outputsListedIn(bay).orElseThrow());
  }

  private static String name(Path path) {
    return path.getFileName().toString();
  }

  private static List<String> names(Path of) throws IOException {
    try (Stream<Path> inside = Files.list(of)) {
      return inside.map(RetriedTaskTest::name).toList();
    }
  }
}
