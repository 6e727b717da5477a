package org.meadowmark.cli;

import java.io.PrintWriter;
import org.meadowmark.core.model.Progress;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Options about what is said on the error stream; the same for every command. */
final class MessageOptions {
  private static final String VERBOSE = "--verbose";

  /** Set by the launcher, which can ask what Java cannot. */
  private static final String TERMINAL_PROPERTY = "meadowmark.terminal";

  @Option(
      names = {"-q", "--quiet"},
      description = "Print nothing but errors and the result.")
  private boolean quiet;

  @Option(
      names = "--no-progress",
      description = "Show no progress bar. There is none where messages go to a file either.")
  private boolean noProgress;

  @Option(names = VERBOSE, description = "Print the stack trace of an error.")
  private boolean verbose;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help and end.")
  private boolean help;

  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  /** Whether a command was told to print stack traces. */
  static boolean verbose(CommandLine command) {
    var option = command.getCommandSpec().findOption(VERBOSE);
    return option != null && Boolean.TRUE.equals(option.getValue());
  }

  /** Says something on the error stream, unless told not to. */
  void say(String message) {
    if (!quiet) {
      PrintWriter err = spec.commandLine().getErr();
      err.println(message);
      err.flush();
    }
  }

  /** A bar on the error stream where someone can see it. */
  Progress progress() {
    return quiet || noProgress || !errorsGoToTerminal() ? Progress.NONE : new ProgressBars();
  }

  private static boolean errorsGoToTerminal() {
    String told = System.getProperty(TERMINAL_PROPERTY);
    return told == null ? System.console() != null : Boolean.parseBoolean(told);
  }
}
