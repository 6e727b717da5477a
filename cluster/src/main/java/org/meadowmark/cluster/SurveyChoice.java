package org.meadowmark.cluster;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.meadowmark.core.survey.Setting;
import org.meadowmark.core.survey.SurveyDraft;
import org.meadowmark.core.survey.SurveyFile;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The survey and what is laid over it. */
final class SurveyChoice {
  @Parameters(
      paramLabel = "SURVEY",
      description =
          "Survey file, or folder with a survey.toml. Its layers may be addresses such as"
              + " hdfs://host/layers/scars.parquet.")
  private Path survey;

  @Option(
      names = "--set",
      paramLabel = "NAME=VALUE",
      description = "Value of a parameter, as in the survey file; a list with commas.")
  private Map<String, String> settings = new LinkedHashMap<>();

  @Option(
      names = "--master",
      paramLabel = "URL",
      description = "Where Spark runs, such as local[2]. Without it, as submitted.")
  private String master = "";

  SurveyDraft draft() {
    SurveyDraft draft = SurveyFile.draft(survey);
    for (Map.Entry<String, String> setting : settings.entrySet()) {
      List<String> values = new ArrayList<>(List.of(setting.getValue().split(",", -1)));
      draft = draft.withSetting(new Setting(setting.getKey(), values, "--set " + setting.getKey()));
    }
    return draft;
  }

  Path file() {
    return survey;
  }

  String master() {
    return master;
  }

  Map<String, String> settings() {
    return settings;
  }
}
