package org.meadowmark.core.read.csv;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;

/**
 * Stops the reading of a record that is longer than any outline, before it fills memory: a file
 * without line ends, or with a quotation mark that is never closed, is one record.
 */
final class RecordLimit extends FilterReader {
  /** Most characters of a record: half a million vertices with forty characters each. */
  static final int MOST_CHARACTERS = 20_000_000;

  private long read;

  /** A record that is too long. */
  static final class TooLongException extends IOException {
    private static final long serialVersionUID = 1L;

    TooLongException() {
      super("a record of more than " + MOST_CHARACTERS + " characters");
    }
  }

  RecordLimit(Reader reader) {
    super(reader);
  }

  /** A record is whole; the next one begins. */
  void recordCame() {
    read = 0;
  }

  @Override
  public int read() throws IOException {
    int character = in.read();
    count(1);
    return character;
  }

  @Override
  public int read(char[] characters, int offset, int length) throws IOException {
    int count = in.read(characters, offset, length);
    count(count);
    return count;
  }

  private void count(int characters) throws IOException {
    read += characters;
    if (read > MOST_CHARACTERS) {
      throw new TooLongException();
    }
  }
}
