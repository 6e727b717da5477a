package org.meadowmark.core.write.record;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Size and digest of a file.
 *
 * @param file name as a reader of the record knows it, never an absolute path
 * @param bytes size
 * @param sha256 SHA-256 in lower-case hexadecimal digits
 */
public record FileDigest(String file, long bytes, String sha256) {
  private static final int BUFFER_BYTES = 1 << 16;

  /**
   * Reads a file once, in constant memory.
   *
   * @param label name to record; of an absolute path only the file name is kept
   * @param path the file
   * @return size and digest of what was read, under the label
   * @throws IOException if it cannot be read
   */
  public static FileDigest of(String label, Path path) throws IOException {
    MessageDigest digest = newSha256();
    long bytes = 0;
    try (InputStream in = Files.newInputStream(path)) {
      byte[] buffer = new byte[BUFFER_BYTES];
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        digest.update(buffer, 0, n);
        bytes += n;
      }
    }
    return new FileDigest(withoutRoot(label), bytes, HexFormat.of().formatHex(digest.digest()));
  }

  private static String withoutRoot(String label) {
    Path path = Path.of(label);
    String kept = path.isAbsolute() ? String.valueOf(path.getFileName()) : label;
    return kept.replace('\\', '/');
  }

  private static MessageDigest newSha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
