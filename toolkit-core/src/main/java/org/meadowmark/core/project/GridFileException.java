package org.meadowmark.core.project;

import java.io.IOException;

/** A grid file whose own figures cannot be, so that it must not be decoded. */
final class GridFileException extends IOException {
  private static final long serialVersionUID = 1L;

  GridFileException(String problem) {
    super(problem);
  }
}
