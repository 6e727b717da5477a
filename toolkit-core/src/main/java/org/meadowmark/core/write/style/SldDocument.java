package org.meadowmark.core.write.style;

import java.io.StringWriter;
import java.math.BigDecimal;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.meadowmark.core.write.XmlText;

/**
 * Writes a style as a Styled Layer Descriptor.
 *
 * <p>Source: OGC 02-070, <i>Styled Layer Descriptor Implementation Specification</i> 1.0.0, with
 * filters of OGC 02-059, <i>Filter Encoding</i> 1.0.0. The older version is the one that every
 * program reads.
 */
final class SldDocument {
  static final String SLD = "http://www.opengis.net/sld";
  static final String OGC = "http://www.opengis.net/ogc";
  private static final String SCHEMA_INSTANCE = "http://www.w3.org/2001/XMLSchema-instance";
  private static final String SCHEMA =
      SLD + " http://schemas.opengis.net/sld/1.0.0/StyledLayerDescriptor.xsd";

  private final StringWriter text = new StringWriter();
  private final XMLStreamWriter xml;
  private int depth;

  private SldDocument() throws XMLStreamException {
    xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
  }

  /** The document of a style. */
  static String of(LayerStyle style) {
    try {
      SldDocument document = new SldDocument();
      document.write(style);
      return document.text.toString();
    } catch (XMLStreamException e) {
      throw new IllegalStateException("cannot write to memory", e);
    }
  }

  private void write(LayerStyle style) throws XMLStreamException {
    xml.writeStartDocument("UTF-8", "1.0");
    open("StyledLayerDescriptor");
    xml.writeDefaultNamespace(SLD);
    xml.writeNamespace("ogc", OGC);
    xml.writeNamespace("xsi", SCHEMA_INSTANCE);
    xml.writeAttribute("version", "1.0.0");
    xml.writeAttribute("xsi", SCHEMA_INSTANCE, "schemaLocation", SCHEMA);
    open("NamedLayer");
    leaf("Name", style.layer());
    open("UserStyle");
    leaf("Name", style.layer());
    leaf("Title", style.title());
    leaf("IsDefault", "1");
    open("FeatureTypeStyle");
    int number = 0;
    for (StyleRule rule : style.rules()) {
      write(rule, ++number);
    }
    close();
    close();
    close();
    close();
    xml.writeCharacters("\n");
    xml.writeEndDocument();
  }

  private void write(StyleRule rule, int number) throws XMLStreamException {
    open("Rule");
    leaf("Name", "rule-" + number);
    leaf("Title", rule.title());
    write(rule.condition());
    for (Symbol symbol : rule.symbols()) {
      if (symbol instanceof Symbol.Surface surface) {
        write(surface);
      } else if (symbol instanceof Symbol.Line line) {
        write(line);
      } else if (symbol instanceof Symbol.Sign sign) {
        write(sign);
      }
    }
    close();
  }

  private void write(Condition condition) throws XMLStreamException {
    if (condition instanceof Condition.Otherwise) {
      indent();
      xml.writeEmptyElement("ElseFilter");
    } else if (condition instanceof Condition.Equal equal) {
      openOgc("Filter");
      openOgc("PropertyIsEqualTo");
      leafOgc("PropertyName", equal.property());
      leafOgc("Literal", equal.value());
      close();
      close();
    } else if (condition instanceof Condition.Between between) {
      openOgc("Filter");
      openOgc("PropertyIsBetween");
      leafOgc("PropertyName", between.property());
      openOgc("LowerBoundary");
      leafOgc("Literal", Long.toString(between.low()));
      close();
      openOgc("UpperBoundary");
      leafOgc("Literal", Long.toString(between.high()));
      close();
      close();
      close();
    }
  }

  private void write(Symbol.Surface surface) throws XMLStreamException {
    open("PolygonSymbolizer");
    open("Fill");
    parameter("fill", surface.fill());
    parameter("fill-opacity", plain(surface.opacity()));
    close();
    stroke(surface.outline(), surface.outlineWidth(), 1, "");
    close();
  }

  private void write(Symbol.Line line) throws XMLStreamException {
    open("LineSymbolizer");
    stroke(line.colour(), line.width(), line.opacity(), line.dashes());
    close();
  }

  private void write(Symbol.Sign sign) throws XMLStreamException {
    open("PointSymbolizer");
    open("Graphic");
    open("Mark");
    leaf("WellKnownName", sign.shape());
    open("Fill");
    parameter("fill", sign.fill());
    close();
    stroke(sign.outline(), 1.6, 1, "");
    close();
    leaf("Size", plain(sign.size()));
    leaf("Rotation", plain(sign.rotation()));
    close();
    close();
  }

  private void stroke(String colour, double width, double opacity, String dashes)
      throws XMLStreamException {
    open("Stroke");
    parameter("stroke", colour);
    parameter("stroke-width", plain(width));
    parameter("stroke-opacity", plain(opacity));
    parameter("stroke-linejoin", "round");
    if (dashes.isEmpty()) {
      parameter("stroke-linecap", "round");
    } else {
      parameter("stroke-dasharray", dashes);
    }
    close();
  }

  private void parameter(String name, String value) throws XMLStreamException {
    indent();
    xml.writeStartElement("CssParameter");
    xml.writeAttribute("name", name);
    xml.writeCharacters(value);
    xml.writeEndElement();
  }

  private void open(String name) throws XMLStreamException {
    indent();
    xml.writeStartElement(name);
    depth++;
  }

  private void openOgc(String name) throws XMLStreamException {
    open("ogc:" + name);
  }

  private void close() throws XMLStreamException {
    depth--;
    indent();
    xml.writeEndElement();
  }

  private void leaf(String name, String value) throws XMLStreamException {
    indent();
    xml.writeStartElement(name);
    xml.writeCharacters(XmlText.legal(value));
    xml.writeEndElement();
  }

  private void leafOgc(String name, String value) throws XMLStreamException {
    leaf("ogc:" + name, value);
  }

  private void indent() throws XMLStreamException {
    xml.writeCharacters("\n" + "  ".repeat(depth));
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
