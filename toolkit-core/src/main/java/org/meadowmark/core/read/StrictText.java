package org.meadowmark.core.read;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.file.Files;
import java.nio.file.Path;

/** Opens text files so that a wrong character set is found, not papered over. */
public final class StrictText {
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private StrictText() {}

  /**
   * Opens a file behind its byte order mark, where it has one.
   *
   * @param file the file
   * @param charset its character set; a byte that does not belong to it makes reading fail with a
   *     {@link java.nio.charset.CharacterCodingException}
   * @return the characters behind the byte order mark; to be closed by the caller
   * @throws IOException if the file cannot be opened, or its first character not decoded
   */
  public static BufferedReader open(Path file, Charset charset) throws IOException {
    BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                Files.newInputStream(file),
                charset
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)));
    try {
      reader.mark(1);
      if (reader.read() != BYTE_ORDER_MARK) {
        reader.reset();
      }
      return reader;
    } catch (IOException e) {
      reader.close();
      throw e;
    }
  }
}
