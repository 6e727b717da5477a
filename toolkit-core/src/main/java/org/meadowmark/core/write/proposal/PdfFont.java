package org.meadowmark.core.write.proposal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The typeface of the PDF, which has the Latin, Greek and Cyrillic scripts: Lato 2.0, under the SIL
 * Open Font License 1.1, whose text stands beside the files. It is embedded, so that a sheet looks
 * the same everywhere.
 */
final class PdfFont {
  static final String FAMILY = "Lato";

  /** Shown in place of a character that the typeface lacks. */
  static final int PLACEHOLDER = '□';

  private final byte[] regular;
  private final byte[] bold;
  private final TrueTypeFont parsed;
  private final CmapLookup characters;

  PdfFont() {
    regular = resource("font/Lato-Regular.ttf");
    bold = resource("font/Lato-Bold.ttf");
    try {
      parsed = new TTFParser().parse(new RandomAccessReadBuffer(regular));
      characters = parsed.getUnicodeCmapLookup();
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the typeface", e);
    }
  }

  byte[] regular() {
    return regular.clone();
  }

  byte[] bold() {
    return bold.clone();
  }

  /** Whether a character can be shown; white space always can. */
  boolean has(int codePoint) {
    return Character.isWhitespace(codePoint) || characters.getGlyphId(codePoint) != 0;
  }

  private static byte[] resource(String name) {
    try (InputStream in = PdfFont.class.getResourceAsStream(name)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the resource " + name, e);
    }
  }
}
