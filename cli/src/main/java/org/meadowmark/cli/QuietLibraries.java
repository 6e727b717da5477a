package org.meadowmark.cli;

import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Keeps news of libraries off the terminal: the library of reference systems tells each time that
 * it closes its database, which it does in every run of some minutes.
 */
final class QuietLibraries {
  /** Kept, for the level of a logger that nobody holds may be lost. */
  private static final Logger REFERENCE_SYSTEMS =
      Logger.getLogger("org.geotools.referencing.factory");

  private QuietLibraries() {}

  static void use() {
    REFERENCE_SYSTEMS.setLevel(Level.WARNING);
  }
}
