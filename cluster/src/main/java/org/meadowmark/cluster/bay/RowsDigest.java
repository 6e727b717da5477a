package org.meadowmark.cluster.bay;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.meadowmark.core.write.record.FileDigest;

/**
 * Stands for the digest of a file where the input of a bay is rows of a layer.
 *
 * <p>It is a SHA-256 of the layer's columns and reference system and of the rows in the order in
 * which they are read, each as this version of the program encodes it. Rows are put in that order
 * before, so neither their order in the layer nor the files that they lie in change it. No other
 * program makes it.
 */
final class RowsDigest {
  private final MessageDigest digest;
  private long bytes;

  private RowsDigest(MessageDigest digest) {
    this.digest = digest;
  }

  static RowsDigest begin(LayerHead head) {
    try {
      RowsDigest begun = new RowsDigest(MessageDigest.getInstance("SHA-256"));
      begun.add(
          (head.crs() + "\n" + String.join("\n", head.attributes()) + "\n")
              .getBytes(StandardCharsets.UTF_8));
      return begun;
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  void add(byte[] row) {
    digest.update(row);
    bytes += row.length;
  }

  /** The digest, under a name that says that it is of rows. */
  FileDigest of(String layer, String rows) {
    return new FileDigest(
        withoutRoot(layer) + " (" + rows + ")", bytes, HexFormat.of().formatHex(digest.digest()));
  }

  /** An address says where on a cluster; a path of this machine says nothing elsewhere. */
  private static String withoutRoot(String label) {
    if (label.contains("://")) {
      return label;
    }
    Path path = Path.of(label);
    return path.isAbsolute() ? String.valueOf(path.getFileName()) : label;
  }
}
