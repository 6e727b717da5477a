package org.meadowmark.cli;

import java.io.BufferedWriter;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import picocli.CommandLine;

/** The program's entry. */
public final class Main {
  private Main() {}

  /**
   * Runs one command and ends the process with its exit code.
   *
   * @param arguments the command line
   */
  public static void main(String[] arguments) {
    NoPreferences.use();
    QuietLibraries.use();
    TemporaryPlace.keepReferenceSystemsApart();
    Charset charset = charset();
    int code;
    try {
      CommandLine commandLine = commandLine();
      commandLine.setOut(writer(System.out, charset));
      commandLine.setErr(writer(System.err, charset));
      code = run(commandLine, arguments);
    } catch (OutOfMemoryError e) {
      System.err.println("error: " + MemoryAdvice.line());
      code = ExitCode.INTERNAL.value();
    }
    System.exit(code);
  }

  static CommandLine commandLine() {
    return MeadowmarkCommand.commandLine(
        List.of(
            new AssessCommand(Toolkit::assess),
            new AssessInPartsCommand(Toolkit::assessInParts),
            new CheckCommand(Toolkit::check),
            new CompareCommand(Toolkit::compare),
            new MakeSampleCommand(new SampleWriter()),
            new TablesCommand()));
  }

  /** UTF-8 in files and pipes whatever the locale, so that results are the same everywhere. */
  private static Charset charset() {
    return System.console() == null ? StandardCharsets.UTF_8 : System.console().charset();
  }

  private static PrintWriter writer(OutputStream stream, Charset charset) {
    return new PrintWriter(new BufferedWriter(new OutputStreamWriter(stream, charset)), true);
  }

  /** Runs one command; what even the library cannot catch still ends in a message and a code. */
  static int run(CommandLine commandLine, String... arguments) {
    int code;
    try {
      code = commandLine.execute(arguments);
    } catch (OutOfMemoryError | LinkageError | StackOverflowError e) {
      code = ErrorReport.fatal(commandLine, e);
    }
    commandLine.getOut().flush();
    commandLine.getErr().flush();
    return code;
  }
}
