package org.meadowmark.core.write.proposal;

import java.util.Objects;

/**
 * A file that the numbers of a sheet come from.
 *
 * @param name file name as the user gave it
 * @param sha256 digest of its content in hexadecimal digits
 */
public record SheetInput(String name, String sha256) {

  /**
   * Takes a digest that was made elsewhere; nothing is read.
   *
   * @param name file name as the user gave it
   * @param sha256 digest of its content in hexadecimal digits
   * @throws NullPointerException if anything is null
   */
  public SheetInput {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(sha256, "sha256");
  }
}
