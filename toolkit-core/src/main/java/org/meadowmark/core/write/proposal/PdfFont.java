package org.meadowmark.core.write.proposal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The typeface of the PDF, which has the Latin, Greek and Cyrillic scripts: Lato 2.0, under the SIL
 * Open Font License 1.1, whose text stands beside the files. It is embedded, so that a sheet looks
 * the same everywhere.
 *
 * <p>Ligatures are off: their glyphs stand for no character, so that words would lose letters when
 * they are searched, copied or read aloud.
 */
final class PdfFont {
  static final String FAMILY = "Lato";

  /** Shown in place of a character that the typeface lacks. */
  static final int PLACEHOLDER = '□';

  private final byte[] regular = resource("font/Lato-Regular.ttf");
  private final byte[] bold = resource("font/Lato-Bold.ttf");
  private final TrueTypeFont parsedRegular = parsed(regular);
  private final TrueTypeFont parsedBold = parsed(bold);
  private final CmapLookup characters;

  PdfFont() {
    try {
      characters = parsedRegular.getUnicodeCmapLookup();
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the typeface", e);
    }
  }

  /** The file of the regular or the bold face. */
  byte[] file(boolean heavy) {
    return (heavy ? bold : regular).clone();
  }

  /** A face parsed. */
  TrueTypeFont face(boolean heavy) {
    return heavy ? parsedBold : parsedRegular;
  }

  /** A face to be embedded in a document, only with the characters that it uses. */
  PDFont embeddedIn(PDDocument document, boolean heavy) throws IOException {
    return PDType0Font.load(document, face(heavy), true);
  }

  /** Whether a character can be shown; white space always can. */
  boolean has(int codePoint) {
    return Character.isWhitespace(codePoint) || characters.getGlyphId(codePoint) != 0;
  }

  private static TrueTypeFont parsed(byte[] file) {
    try {
      TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(file));
      font.setEnableGsub(false);
      return font;
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the typeface", e);
    }
  }

  private static byte[] resource(String name) {
    try (InputStream in = PdfFont.class.getResourceAsStream(name)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the resource " + name, e);
    }
  }
}
