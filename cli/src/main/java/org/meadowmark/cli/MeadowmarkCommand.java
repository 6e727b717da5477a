package org.meadowmark.cli;

import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.UsageMessageSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command that holds the others. */
@Command(
    name = "meadowmark",
    description = "Assesses boat damage in seagrass and eelgrass beds from GIS layers.",
    versionProvider = ToolVersion.class,
    customSynopsis = "meadowmark COMMAND [OPTION]...",
    footerHeading = "%nExamples:%n",
    footer = {
      "  meadowmark COMMAND --help     what a command does, and its options",
      "  meadowmark tables parameters  every parameter with default, limits and source"
    })
final class MeadowmarkCommand implements Runnable {
  private static final int HELP_WIDTH = 100;
  private static final int LONGEST_OPTION_COLUMN = 34;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help and end.")
  private boolean help;

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version and end.")
  private boolean version;

  @Spec private CommandSpec spec;

  /**
   * The command line of the program.
   *
   * @param commands the commands, in the order of the help
   */
  static CommandLine commandLine(List<?> commands) {
    CommandLine top = new CommandLine(new MeadowmarkCommand());
    commands.forEach(top::addSubcommand);
    ErrorReport errors = new ErrorReport();
    top.setParameterExceptionHandler(errors);
    top.setExecutionExceptionHandler(errors);
    // A picocli file of arguments would make a survey named @something unreadable.
    top.setExpandAtFiles(false);
    top.setCaseInsensitiveEnumValuesAllowed(true);
    layOut(top);
    top.getSubcommands().values().forEach(MeadowmarkCommand::layOut);
    return top;
  }

  private static void layOut(CommandLine command) {
    command.setUsageHelpWidth(HELP_WIDTH);
    command.setUsageHelpLongOptionsMaxWidth(LONGEST_OPTION_COLUMN);
    UsageMessageSpec usage = command.getCommandSpec().usageMessage();
    usage.sortOptions(false);
    usage.synopsisHeading("Usage: ");
    usage.descriptionHeading("%n");
    usage.parameterListHeading("%n");
    usage.optionListHeading("%nOptions:%n");
    usage.commandListHeading("%nCommands:%n");
    usage.exitCodeListHeading("%nExit codes:%n");
    usage.exitCodeList(ExitCode.list());
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "No command given");
  }
}
