package org.meadowmark.core.write.proposal;

import java.io.IOException;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;

/**
 * Answers every question for a font of the machine with the typeface that comes along.
 *
 * <p>The layout library asks for a standard font even where none is used; the answer would
 * otherwise come from a search of all fonts of the machine, which takes seconds and leaves a file
 * in the user's home folder.
 */
final class BundledFontMapper implements FontMapper {
  private final TrueTypeFont font;

  BundledFontMapper(TrueTypeFont font) {
    this.font = font;
  }

  /** Makes a PDF. */
  @FunctionalInterface
  interface Work {
    byte[] run() throws IOException;
  }

  /** Does work while this mapper stands in for the one of the PDF library. */
  byte[] during(Work work) throws IOException {
    synchronized (BundledFontMapper.class) {
      FontMapper usual = FontMappers.instance();
      FontMappers.set(this);
      try {
        return work.run();
      } finally {
        FontMappers.set(usual);
      }
    }
  }

  @Override
  public FontMapping<TrueTypeFont> getTrueTypeFont(String name, PDFontDescriptor descriptor) {
    return new FontMapping<>(font, true);
  }

  @Override
  public FontMapping<FontBoxFont> getFontBoxFont(String name, PDFontDescriptor descriptor) {
    return new FontMapping<>(font, true);
  }

  @Override
  public CIDFontMapping getCIDFont(
      String name, PDFontDescriptor descriptor, PDCIDSystemInfo system) {
    return new CIDFontMapping(null, font, true);
  }
}
