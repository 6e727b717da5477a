package org.meadowmark.core.model;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;

/** What to do where something could not be written. */
public final class WriteAdvice {
  private WriteAdvice() {}

  /**
   * What the system said: libraries put it below words of their own, and some failures have a path
   * for a message.
   *
   * @param failure what a file operation threw
   * @return the reason that the deepest failure of input or output gives, in words; its message or
   *     class where it gives none
   */
  public static String reason(IOException failure) {
    Throwable deepest = failure;
    while (deepest.getCause() instanceof IOException cause) {
      deepest = cause;
    }
    if (deepest instanceof AccessDeniedException) {
      return "no permission";
    }
    if (deepest instanceof NoSuchFileException) {
      return "a file or folder does not exist";
    }
    if (deepest instanceof FileSystemException file && file.getReason() != null) {
      return file.getReason();
    }
    return deepest.getMessage() == null ? deepest.getClass().getSimpleName() : deepest.getMessage();
  }

  /**
   * Advice in the words of a command.
   *
   * @param reason what the system said; empty if nothing
   * @return what to do, as a clause without a full stop; general advice where the reason is not
   *     known
   */
  public static String of(String reason) {
    String words = reason.toLowerCase(Locale.ROOT);
    if (words.contains("no space")
        || words.contains("not enough space")
        || words.contains("quota")
        || words.contains("disk is full")) {
      return "make space on its drive, or name a place on another drive";
    }
    if (words.contains("no permission") || words.contains("read-only")) {
      return "name a place that you may write to, or change the permissions";
    }
    if (words.contains("name too long")) {
      return "name a place with a shorter path";
    }
    return "check free space and permissions";
  }
}
