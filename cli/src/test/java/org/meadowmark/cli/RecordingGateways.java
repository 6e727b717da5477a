package org.meadowmark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.meadowmark.core.assessment.Assessment;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.write.record.FindingsReport;
import org.meadowmark.samples.EstuarySettings;
import org.meadowmark.samples.ScarSettings;
import picocli.CommandLine;

/** Gateways that keep what they were asked, and answer or fail as told. */
final class RecordingGateways {
  final List<AssessGateway.Request> assessed = new ArrayList<>();
  final List<PartsGateway.Request> assessedInParts = new ArrayList<>();
  final List<CheckGateway.Request> checked = new ArrayList<>();
  final List<CompareGateway.Request> compared = new ArrayList<>();
  final List<Object> made = new ArrayList<>();
  final List<Finding> findings = new ArrayList<>();
  final List<LayerCount> counts = new ArrayList<>();
  RuntimeException failure;
  Error error;
  Progress progress;

  CommandLine commandLine() {
    return MeadowmarkCommand.commandLine(
        List.of(
            new AssessCommand(this::assess),
            new AssessInPartsCommand(this::assessInParts),
            new CheckCommand(this::check),
            new CompareCommand(this::compare),
            new MakeSampleCommand(sampleGateway()),
            new TablesCommand()));
  }

  Terminal.Outcome run(String... arguments) {
    return Terminal.run(commandLine(), arguments);
  }

  private String assess(AssessGateway.Request request, Progress given) {
    progress = given;
    assessed.add(request);
    failIfTold();
    return "summary of " + request.survey().name() + "\n";
  }

  private Assessment.Done assessInParts(PartsGateway.Request request, Progress given) {
    progress = given;
    assessedInParts.add(request);
    failIfTold();
    return new Assessment.Done("summary of " + request.survey().name() + "\n", null, 0);
  }

  private String compare(CompareGateway.Request request, Progress given) {
    progress = given;
    compared.add(request);
    failIfTold();
    return "summary of " + request.surveys().size() + " surveys\n";
  }

  private FindingsReport check(CheckGateway.Request request, Progress given) {
    progress = given;
    checked.add(request);
    failIfTold();
    return new FindingsReport(findings, counts);
  }

  private SampleGateway sampleGateway() {
    return new SampleGateway() {
      @Override
      public String inventEstuary(EstuarySettings settings, Path output, Progress given) {
        made.addAll(List.of(settings, output));
        failIfTold();
        return settings.scars() + " scars\n";
      }

      @Override
      public String inventScars(
          ScarSettings settings, LayerSource beds, Path output, Progress given) {
        made.addAll(List.of(settings, beds, output));
        failIfTold();
        return settings.scars() + " scars on beds";
      }
    };
  }

  private void failIfTold() {
    if (failure != null) {
      throw failure;
    }
    if (error != null) {
      throw error;
    }
  }
}
