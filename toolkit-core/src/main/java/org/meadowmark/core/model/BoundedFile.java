package org.meadowmark.core.model;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Reads files that are small if they are what their place says, and have no end if they are not.
 */
public final class BoundedFile {
  private BoundedFile() {}

  /** A file that is longer than it may be. */
  public static final class TooLongException extends IOException {
    private static final long serialVersionUID = 1L;

    TooLongException(int mostBytes) {
      super("longer than " + mostBytes + " bytes");
    }
  }

  /**
   * {@return the text of a file in UTF-8}
   *
   * @param file the file
   * @param mostBytes most bytes that it may have
   * @throws TooLongException if it has more
   * @throws java.nio.charset.CharacterCodingException if it is not UTF-8
   * @throws IOException if it cannot be read
   */
  public static String text(Path file, int mostBytes) throws IOException {
    byte[] bytes;
    try (InputStream stream = Files.newInputStream(file)) {
      bytes = stream.readNBytes(mostBytes + 1);
    }
    if (bytes.length > mostBytes) {
      throw new TooLongException(mostBytes);
    }
    return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
  }
}
