package org.meadowmark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** Turns every failure into one line on the error stream and an exit code. */
final class ErrorReport implements IParameterExceptionHandler, IExecutionExceptionHandler {

  @Override
  public int handleParseException(ParameterException e, String[] arguments) {
    CommandLine command = e.getCommandLine();
    String name = command.getCommandSpec().qualifiedName();
    String near = suggestions(e);
    String see = (near.isEmpty() ? "; see '" : near + " See '") + name + " --help'";
    print(command, e, oneLine(e.getMessage()) + see);
    return ExitCode.USAGE.value();
  }

  @Override
  public int handleExecutionException(
      Exception e, CommandLine command, ParseResult fullParseResult) {
    if (isStopping()) {
      command.getErr().println("error: stopped before the end; no output was written");
      return ExitCode.INTERNAL.value();
    }
    if (isOutOfMemory(e)) {
      return fatal(command, e);
    }
    ExitCode code = codeOf(e);
    String message =
        switch (code) {
          case INTERNAL -> internal(e);
          case OUTPUT_FAILED ->
              e instanceof MeadowmarkException
                  ? e.getMessage()
                  : "output cannot be written: " + e.getMessage() + "; check space and permissions";
          default -> e.getMessage();
        };
    print(command, e, oneLine(message));
    return code.value();
  }

  /** What the runtime itself gave up at: as a rule memory, of which it says how much to allow. */
  static int fatal(CommandLine command, Throwable e) {
    ParseResult parsed = command.getParseResult();
    print(
        parsed != null && parsed.hasSubcommand()
            ? parsed.subcommand().commandSpec().commandLine()
            : command,
        e,
        reasonOfFatal(e));
    return ExitCode.INTERNAL.value();
  }

  private static String reasonOfFatal(Throwable e) {
    if (isOutOfMemory(e)) {
      return MemoryAdvice.line();
    }
    if (e instanceof StackOverflowError) {
      return "internal error: the input is nested too deeply for the program; please report it with"
          + " the input";
    }
    return oneLine(internal(e));
  }

  private static String internal(Throwable e) {
    return "internal error: " + e + "; please report it with the trace that --verbose prints";
  }

  /** Libraries wrap what their threads died of. */
  private static boolean isOutOfMemory(Throwable failure) {
    for (Throwable each = failure; each != null; each = each.getCause()) {
      if (each instanceof OutOfMemoryError
          || String.valueOf(each.getMessage()).contains(OutOfMemoryError.class.getName())) {
        return true;
      }
    }
    return false;
  }

  /** Whether a signal ends the process: what fails then fails because of it. */
  private static boolean isStopping() {
    Thread hook = new Thread(() -> {});
    try {
      Runtime.getRuntime().addShutdownHook(hook);
      Runtime.getRuntime().removeShutdownHook(hook);
      return false;
    } catch (IllegalStateException e) {
      return true;
    }
  }

  private static String suggestions(ParameterException e) {
    if (!(e instanceof UnmatchedArgumentException unmatched)) {
      return "";
    }
    List<String> near = unmatched.getSuggestions();
    return near.isEmpty() ? "" : "; did you mean " + String.join(" or ", near) + "?";
  }

  static ExitCode codeOf(Exception e) {
    if (e instanceof OutputExistsException) {
      return ExitCode.OUTPUT_EXISTS;
    }
    if (e instanceof OutputFailedException) {
      return ExitCode.OUTPUT_FAILED;
    }
    if (e instanceof MeadowmarkException) {
      return ExitCode.INPUT;
    }
    // Readers turn their own failures into findings, so what comes through is a failed write.
    if (e instanceof IOException || e instanceof UncheckedIOException) {
      return ExitCode.OUTPUT_FAILED;
    }
    return ExitCode.INTERNAL;
  }

  private static void print(CommandLine command, Throwable e, String message) {
    PrintWriter err = command.getErr();
    err.println("error: " + message);
    if (MessageOptions.verbose(command)) {
      e.printStackTrace(err);
    }
    err.flush();
  }

  static String oneLine(String message) {
    return String.valueOf(message)
        .strip()
        .replaceAll("\\s*\\R\\s*", " ")
        .replace("option option", "option");
  }
}
