package org.meadowmark.cluster;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Entry for {@code spark-submit}. */
@Command(
    name = "meadowmark-cluster",
    description = "Assesses boat damage in the beds of many bays on Apache Spark.",
    customSynopsis = "spark-submit [SPARK OPTION]... meadowmark-cluster.jar COMMAND [OPTION]...",
    subcommands = {AssessBaysCommand.class, ConvertCommand.class})
public final class Main implements Runnable {
  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      scope = CommandLine.ScopeType.INHERIT,
      description = "Show this help and end.")
  private boolean help;

  @Spec private CommandSpec spec;

  /**
   * Runs one command and ends the process with its exit code.
   *
   * @param arguments the command line
   */
  public static void main(String[] arguments) {
    int code = commandLine().execute(arguments);
    if (code != 0) {
      System.exit(code);
    }
  }

  static CommandLine commandLine() {
    CommandLine commandLine = new CommandLine(new Main());
    commandLine.setExpandAtFiles(false);
    commandLine.setUsageHelpWidth(100);
    commandLine.setExecutionExceptionHandler(
        (failure, command, parsed) -> Failure.report(failure, command.getErr()));
    commandLine.setParameterExceptionHandler(
        (failure, given) -> {
          PrintWriter err = failure.getCommandLine().getErr();
          err.println("error: " + failure.getMessage());
          err.flush();
          return Failure.USAGE;
        });
    return commandLine;
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "No command given; use assess or convert");
  }
}
