package org.meadowmark.cli;

import java.util.LinkedHashMap;
import java.util.Map;

/** How the program ends. */
enum ExitCode {
  OK(0, "Done."),
  INTERNAL(1, "Internal error, or not enough memory."),
  USAGE(2, "The command line is wrong."),
  INPUT(3, "The input cannot be used, or 'check' found errors in it."),
  OUTPUT_EXISTS(4, "The output exists already and may not be replaced."),
  OUTPUT_FAILED(5, "The output cannot be written.");

  private final int value;
  private final String meaning;

  ExitCode(int value, String meaning) {
    this.value = value;
    this.meaning = meaning;
  }

  int value() {
    return value;
  }

  String meaning() {
    return meaning;
  }

  /** For help texts. */
  static Map<String, String> list() {
    Map<String, String> list = new LinkedHashMap<>();
    for (ExitCode code : values()) {
      list.put(Integer.toString(code.value), code.meaning);
    }
    return list;
  }
}
