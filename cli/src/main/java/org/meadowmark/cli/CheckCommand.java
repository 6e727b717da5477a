package org.meadowmark.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.write.record.FindingsReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Checks a survey without measuring it. */
@Command(
    name = "check",
    customSynopsis = "meadowmark check [SURVEY] [OPTION]...",
    description = {
      "Lists everything that is wrong or doubtful in a survey.",
      "",
      "Reads the layers as 'assess' does and prints each finding with file, layer, feature, what is"
          + " wrong and what 'assess' does about it. Writes nothing. Ends with code 3 if anything"
          + " found keeps 'assess' from running."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  meadowmark check heron-sound",
      "  meadowmark check --scars scars.gpkg --beds beds.shp --format json > findings.json"
    })
final class CheckCommand implements Callable<Integer> {
  enum Format {
    TEXT,
    JSON
  }

  @Mixin private SurveyOptions survey;

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "Form of the list. Default: text. JSON always has every finding.")
  private Format format = Format.TEXT;

  @Option(
      names = "--most",
      paramLabel = "N",
      description = "Findings of one kind to list as text before 'and n more'. Default: all.")
  private int most = Integer.MAX_VALUE;

  @Mixin private ThreadOption threads;
  @Mixin private MessageOptions messages;
  @Spec private CommandSpec spec;

  private final CheckGateway gateway;

  CheckCommand(CheckGateway gateway) {
    this.gateway = gateway;
  }

  @Override
  public Integer call() {
    if (most < 0) {
      throw new ParameterException(
          spec.commandLine(), "Invalid value for option '--most': " + most + " is less than 0");
    }
    SurveyOptions.Survey given = survey.read();
    Progress progress = messages.progress();
    FindingsReport report;
    try {
      report =
          gateway.check(
              new CheckGateway.Request(given.definition(), given.tables(), threads.threads()),
              progress);
    } finally {
      progress.end();
    }
    PrintWriter out = spec.commandLine().getOut();
    switch (format) {
      case TEXT -> report.lines(most).forEach(out::println);
      case JSON -> out.println(report.toJson().stripTrailing());
    }
    return (report.count(Finding.Level.ERROR) > 0 ? ExitCode.INPUT : ExitCode.OK).value();
  }
}
