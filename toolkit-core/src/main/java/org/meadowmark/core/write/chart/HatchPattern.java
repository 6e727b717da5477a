package org.meadowmark.core.write.chart;

import java.awt.Paint;
import java.awt.TexturePaint;
import java.util.HashMap;
import java.util.Map;
import org.apache.batik.svggen.DefaultExtensionHandler;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGPaintDescriptor;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** Draws the hatching for what is not known as lines, which stay sharp at any size. */
final class HatchPattern extends DefaultExtensionHandler {
  private static final String NAMESPACE = "http://www.w3.org/2000/svg";

  private final Map<Paint, String> ids = new HashMap<>();

  @Override
  public SVGPaintDescriptor handlePaint(Paint paint, SVGGeneratorContext context) {
    if (!(paint instanceof TexturePaint)) {
      return super.handlePaint(paint, context);
    }
    String known = ids.get(paint);
    if (known != null) {
      return new SVGPaintDescriptor("url(#" + known + ")", "1");
    }
    String id = "hatch" + (ids.size() + 1);
    ids.put(paint, id);
    Element pattern = pattern(context.getDOMFactory(), id);
    return new SVGPaintDescriptor("url(#" + id + ")", "1", pattern);
  }

  private static Element pattern(Document document, String id) {
    String side = Integer.toString(ChartStyle.HATCH);
    Element pattern = document.createElementNS(NAMESPACE, "pattern");
    pattern.setAttribute("id", id);
    pattern.setAttribute("patternUnits", "userSpaceOnUse");
    pattern.setAttribute("width", side);
    pattern.setAttribute("height", side);
    Element ground = document.createElementNS(NAMESPACE, "rect");
    ground.setAttribute("width", side);
    ground.setAttribute("height", side);
    ground.setAttribute("fill", ChartStyle.css(ChartStyle.HATCH_GROUND));
    pattern.appendChild(ground);
    Element line = document.createElementNS(NAMESPACE, "path");
    line.setAttribute("d", "M-2 2L2 -2M0 %1$s L%1$s 0M6 10L10 6".formatted(side));
    line.setAttribute("stroke", ChartStyle.css(ChartStyle.HATCH_LINE));
    line.setAttribute("stroke-width", "1.2");
    line.setAttribute("fill", "none");
    pattern.appendChild(line);
    return pattern;
  }
}
