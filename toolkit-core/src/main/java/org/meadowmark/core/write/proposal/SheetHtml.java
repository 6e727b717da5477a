package org.meadowmark.core.write.proposal;

import com.samskivert.mustache.Escapers;
import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.meadowmark.core.write.XmlText;

/**
 * Makes the page of a sheet: XHTML that is HTML at the same time, complete in itself, without
 * scripts.
 *
 * <p>The template library escapes by default, has no logic that could grow into the page, needs no
 * build step and no other library, and has partials and sections enough for a whole report.
 */
final class SheetHtml {
  private static final String TEMPLATE = "sheet.mustache";
  private static final String STYLE = "sheet.css";
  private static final double MAP_MILLIMETRES = 180;

  private final Template template;
  private final String css;
  private final SheetText text;

  SheetHtml(SheetText text, Paper paper) {
    this.text = text;
    this.css = resource(STYLE).replace("PAPER", paper.css());
    this.template = template(TEMPLATE);
  }

  /** The page of a sheet. */
  String page(MapLayers layers, ZoneSheet sheet) {
    MapDrawing map = ZoneMap.draw(layers, sheet, text);
    String style =
        css.replace("MAP_HEIGHT", SvgWriter.number(MAP_MILLIMETRES * map.height() / ZoneMap.WIDTH));
    return template.execute(new SheetWords(layers, sheet, text).view(map, style));
  }

  /** A template of this package, which escapes what is put into it. */
  static Template template(String name) {
    return Mustache.compiler()
        .withEscaper(raw -> Escapers.HTML.escape(XmlText.legal(raw)))
        .strictSections(true)
        .compile(resource(name));
  }

  /** The style of all sheets, without a map. */
  static String style(Paper paper) {
    return style(paper, 0);
  }

  /** The style of all sheets, with a map. */
  static String style(Paper paper, double mapHeightMillimetres) {
    return resource(STYLE)
        .replace("PAPER", paper.css())
        .replace("MAP_HEIGHT", SvgWriter.number(mapHeightMillimetres));
  }

  private static String resource(String name) {
    try (InputStream in = SheetHtml.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read the resource " + name, e);
    }
  }
}
