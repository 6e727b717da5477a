package org.meadowmark.core.write.chart;

import java.awt.Font;
import java.awt.RenderingHints;
import java.awt.font.FontRenderContext;
import java.awt.geom.Rectangle2D;
import java.io.StringWriter;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.jfree.chart.JFreeChart;
import org.meadowmark.core.write.XmlText;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.Text;

/**
 * A chart as SVG. Text stays text, as wide as it was laid out for whatever typeface a viewer has.
 * Ids are counted and nothing tells the time: the same chart gives the same bytes where the same
 * typeface is installed.
 */
final class ChartSvg {
  private static final String NAMESPACE = "http://www.w3.org/2000/svg";
  private static final String FAMILIES = "'DejaVu Sans', Verdana, 'Helvetica Neue', sans-serif";
  private static final FontRenderContext MEASURE = new FontRenderContext(null, true, true);

  private ChartSvg() {}

  /** The picture as a document of its own. */
  static String of(Picture picture) {
    Document document = emptyDocument();
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
    context.setComment(null);
    context.setPrecision(2);
    context.setExtensionHandler(new HatchPattern());
    SVGGraphics2D graphics = new SVGGraphics2D(context, false);
    graphics.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    picture.chart().draw(graphics, new Rectangle2D.Double(0, 0, picture.width(), picture.height()));
    Element root = graphics.getRoot();
    graphics.dispose();
    root.setAttribute("width", Integer.toString(picture.width()));
    root.setAttribute("height", Integer.toString(picture.height()));
    root.setAttribute("viewBox", "0 0 " + picture.width() + " " + picture.height());
    root.setAttribute("font-family", FAMILIES);
    root.setAttribute("text-rendering", "geometricPrecision");
    root.setAttribute("role", "img");
    describe(root, picture.chart());
    finishText(root, ChartStyle.font(Font.PLAIN, 12));
    return written(root);
  }

  private static Document emptyDocument() {
    try {
      return DocumentBuilderFactory.newDefaultNSInstance()
          .newDocumentBuilder()
          .getDOMImplementation()
          .createDocument(NAMESPACE, "svg", null);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException("every Java platform makes XML documents", e);
    }
  }

  private static void describe(Element root, JFreeChart chart) {
    if (chart.getTitle() == null) {
      return;
    }
    Element title = root.getOwnerDocument().createElementNS(NAMESPACE, "title");
    title.setTextContent(chart.getTitle().getText());
    root.insertBefore(title, root.getFirstChild());
  }

  /** Fixes the width of every text, and replaces what XML cannot hold. */
  private static void finishText(Node node, Font inherited) {
    if (node instanceof Text text) {
      text.setData(XmlText.legal(text.getData()));
      return;
    }
    Font font = inherited;
    if (node instanceof Element element) {
      font = fontOf(element, inherited);
      if (node.getParentNode() != null && node.getParentNode().getParentNode() != null) {
        element.removeAttribute("font-family");
      }
      if (element.getTagName().equals("text")) {
        double width = font.getStringBounds(element.getTextContent(), MEASURE).getWidth();
        if (width > 0) {
          element.setAttribute("textLength", String.format(Locale.ROOT, "%.1f", width));
          element.setAttribute("lengthAdjust", "spacingAndGlyphs");
        }
      }
    }
    for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
      finishText(child, font);
    }
  }

  private static Font fontOf(Element element, Font inherited) {
    Font font = inherited;
    String size = element.getAttribute("font-size").replace("px", "");
    if (!size.isEmpty()) {
      font = font.deriveFont(Float.parseFloat(size));
    }
    String weight = element.getAttribute("font-weight");
    if (!weight.isEmpty()) {
      font = font.deriveFont(weight.equals("normal") ? Font.PLAIN : Font.BOLD);
    }
    return font;
  }

  private static String written(Element root) {
    try {
      Transformer transformer = TransformerFactory.newDefaultInstance().newTransformer();
      transformer.setOutputProperty(OutputKeys.ENCODING, "UTF-8");
      transformer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
      StringWriter text = new StringWriter();
      transformer.transform(new DOMSource(root), new StreamResult(text));
      return text.append('\n').toString();
    } catch (TransformerException e) {
      throw new IllegalStateException("cannot write to memory", e);
    }
  }
}
