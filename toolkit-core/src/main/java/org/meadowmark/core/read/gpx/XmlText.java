package org.meadowmark.core.read.gpx;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.read.StrictText;

/**
 * An XML file as text, decoded as its declaration says.
 *
 * <p>The parser of the Java library could decode it too, but prints what it cannot decode to
 * standard error.
 */
final class XmlText {
  private static final Pattern ENCODING =
      Pattern.compile("\\A\\s*<\\?xml[^>]*?encoding\\s*=\\s*[\"']([A-Za-z0-9._:-]+)[\"']");
  private static final int DECLARATION_BYTES = 256;

  private XmlText() {}

  /** Opens a file; a byte that is not of its character set makes reading fail. */
  static Reader open(Path file, LayerProblems problems) throws IOException {
    return StrictText.open(file, charset(file, problems));
  }

  private static Charset charset(Path file, LayerProblems problems) throws IOException {
    byte[] start;
    try (InputStream stream = Files.newInputStream(file)) {
      start = stream.readNBytes(DECLARATION_BYTES);
    }
    String text = new String(start, StandardCharsets.ISO_8859_1);
    if (text.startsWith("\u00FE\u00FF") || text.startsWith("\u00FF\u00FE")) {
      return StandardCharsets.UTF_16;
    }
    Matcher declared = ENCODING.matcher(text);
    if (!declared.find()) {
      return StandardCharsets.UTF_8;
    }
    try {
      return Charset.forName(declared.group(1));
    } catch (IllegalArgumentException e) {
      throw problems.refused(
          "declares the unknown encoding '" + declared.group(1) + "'", "save it as UTF-8", e);
    }
  }
}
