package org.meadowmark.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** Options as the user gave them, for the record of a run. */
final class GivenOptions {
  private GivenOptions() {}

  /** Text of each option and parameter given, by its longest name, in the order of the help. */
  static Map<String, String> of(ParseResult result) {
    Map<String, String> given = new LinkedHashMap<>();
    for (ArgSpec argument : result.commandSpec().args()) {
      String text = String.join(" ", argument.originalStringValues());
      if (argument instanceof OptionSpec option) {
        if (result.hasMatchedOption(option)) {
          given.put(option.longestName(), text);
        }
      } else if (!argument.originalStringValues().isEmpty()) {
        given.put(argument.paramLabel(), text);
      }
    }
    return given;
  }
}
