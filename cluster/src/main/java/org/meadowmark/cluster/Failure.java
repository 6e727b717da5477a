package org.meadowmark.cluster;

import java.io.PrintWriter;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;

/** Turns every failure into one line and an exit code, the codes of the meadowmark command. */
final class Failure {
  static final int INTERNAL = 1;
  static final int USAGE = 2;
  static final int INPUT = 3;
  static final int OUTPUT_EXISTS = 4;
  static final int OUTPUT_FAILED = 5;

  private Failure() {}

  static int report(Exception failure, PrintWriter err) {
    Throwable known = known(failure);
    int code;
    if (known instanceof OutputExistsException) {
      code = OUTPUT_EXISTS;
    } else if (known instanceof OutputFailedException) {
      code = OUTPUT_FAILED;
    } else if (known instanceof MeadowmarkException) {
      code = INPUT;
    } else {
      code = INTERNAL;
    }
    err.println("error: " + (code == INTERNAL ? "internal error: " : "") + oneLine(known));
    if (code == INTERNAL) {
      failure.printStackTrace(err);
    }
    err.flush();
    return code;
  }

  /** Spark wraps what fails on a machine; the cause that the toolkit names is what to show. */
  private static Throwable known(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof MeadowmarkException) {
        return cause;
      }
    }
    return failure;
  }

  private static String oneLine(Throwable failure) {
    String message = failure instanceof MeadowmarkException ? failure.getMessage() : "" + failure;
    return message.strip().replaceAll("\\s*\\R\\s*", " ");
  }
}
