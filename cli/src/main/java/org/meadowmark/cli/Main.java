package org.meadowmark.cli;

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
    System.exit(run(commandLine(), arguments));
  }

  static CommandLine commandLine() {
    return MeadowmarkCommand.commandLine(
        List.of(
            new AssessCommand(Toolkit::assess),
            new CheckCommand(Toolkit::check),
            new MakeSampleCommand(new SampleWriter()),
            new TablesCommand()));
  }

  /** Runs one command; what even the library cannot catch still ends in a message and a code. */
  static int run(CommandLine commandLine, String... arguments) {
    int code;
    try {
      code = commandLine.execute(arguments);
    } catch (OutOfMemoryError e) {
      commandLine
          .getErr()
          .println(
              "error: out of memory ("
                  + Runtime.getRuntime().maxMemory() / (1L << 20)
                  + " MiB allowed); allow more with MEADOWMARK_JAVA_OPTS=-Xmx8g");
      code = ExitCode.INTERNAL.value();
    }
    commandLine.getOut().flush();
    commandLine.getErr().flush();
    return code;
  }
}
