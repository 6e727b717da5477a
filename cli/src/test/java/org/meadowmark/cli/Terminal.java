package org.meadowmark.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Help.Ansi;

/** Runs a command line and keeps what it says. */
final class Terminal {
  /** What a run left. */
  record Outcome(int exitCode, String out, String err) {}

  private Terminal() {}

  static Outcome run(CommandLine commandLine, String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    commandLine.setOut(new PrintWriter(out));
    commandLine.setErr(new PrintWriter(err));
    commandLine.setColorScheme(Help.defaultColorScheme(Ansi.OFF));
    int code = Main.run(commandLine, arguments);
    String line = System.lineSeparator();
    return new Outcome(
        code, out.toString().replace(line, "\n"), err.toString().replace(line, "\n"));
  }
}
