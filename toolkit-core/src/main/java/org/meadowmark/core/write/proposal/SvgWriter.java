package org.meadowmark.core.write.proposal;

import java.io.StringWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.meadowmark.core.write.XmlText;

/**
 * Writes a piece of SVG. Text and attributes are escaped, characters that XML forbids replaced;
 * coordinates have one decimal, the same in every locale.
 */
final class SvgWriter {
  static final String NAMESPACE = "http://www.w3.org/2000/svg";

  /**
   * Families with one face each, which only the PDF has: its library for pictures cannot choose a
   * face by weight. A browser takes the next name.
   */
  static final String REGULAR_FACE = "Drawing Regular";

  static final String BOLD_FACE = "Drawing Bold";

  private static final String OTHERS = ", Lato, 'Helvetica Neue', Arial, sans-serif";
  private static final String REGULAR = "'" + REGULAR_FACE + "'" + OTHERS;
  private static final String BOLD = "'" + BOLD_FACE + "'" + OTHERS;

  private final StringWriter text = new StringWriter();
  private final XMLStreamWriter xml;

  SvgWriter() {
    try {
      xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
    } catch (XMLStreamException e) {
      throw unexpected(e);
    }
  }

  /**
   * Begins a picture.
   *
   * @param id prefix of the ids of its title and description, unique in the page
   * @param title short name for those who do not see it
   * @param description what it shows; empty for none
   */
  SvgWriter picture(
      String id, double width, double height, String styleClass, String title, String description) {
    String labels = description.isEmpty() ? id + "-title" : id + "-title " + id + "-desc";
    open("svg");
    attributes("xmlns", NAMESPACE, "class", styleClass, "role", "img", "aria-labelledby", labels);
    attributes("viewBox", "0 0 " + number(width) + " " + number(height));
    open("title", "id", id + "-title").text(title).close();
    if (!description.isEmpty()) {
      open("desc", "id", id + "-desc").text(description).close();
    }
    return this;
  }

  /** Begins an element. */
  SvgWriter open(String name, String... attributes) {
    try {
      xml.writeStartElement(name);
    } catch (XMLStreamException e) {
      throw unexpected(e);
    }
    return attributes(attributes);
  }

  /** An element without content. */
  SvgWriter element(String name, String... attributes) {
    try {
      xml.writeEmptyElement(name);
    } catch (XMLStreamException e) {
      throw unexpected(e);
    }
    return attributes(attributes);
  }

  /** Text of the element. */
  SvgWriter text(String words) {
    try {
      xml.writeCharacters(XmlText.legal(words));
    } catch (XMLStreamException e) {
      throw unexpected(e);
    }
    return this;
  }

  /** Ends the element that began last. */
  SvgWriter close() {
    try {
      xml.writeEndElement();
    } catch (XMLStreamException e) {
      throw unexpected(e);
    }
    return this;
  }

  /** A straight line. */
  SvgWriter line(double x1, double y1, double x2, double y2, String... attributes) {
    element("line", "x1", number(x1), "y1", number(y1), "x2", number(x2), "y2", number(y2));
    return attributes(attributes);
  }

  /** A rectangle. */
  SvgWriter rectangle(double x, double y, double width, double height, String... attributes) {
    element("rect", "x", number(x), "y", number(y));
    attributes("width", number(width), "height", number(height));
    return attributes(attributes);
  }

  /** A circle. */
  SvgWriter circle(double x, double y, double radius, String... attributes) {
    element("circle", "cx", number(x), "cy", number(y), "r", number(radius));
    return attributes(attributes);
  }

  /** A path; nothing where it has no commands. */
  SvgWriter path(String commands, String... attributes) {
    return commands.isEmpty() ? this : element("path", "d", commands).attributes(attributes);
  }

  /** A line of text. */
  SvgWriter label(double x, double y, String words, String... attributes) {
    open("text", "x", number(x), "y", number(y)).attributes(attributes);
    return text(words).close();
  }

  /** A line of text around a middle, on a light plate, to be read on any ground. */
  SvgWriter plate(double x, double y, double size, String words, String... attributes) {
    double width = size * (0.62 * words.codePointCount(0, words.length()) + 0.35);
    rectangle(
        x - width / 2,
        y - size * 0.88,
        width,
        size * 1.18,
        "rx",
        "3",
        "fill",
        MapColours.WHITE,
        "fill-opacity",
        "0.82");
    return label(x, y, words, attributes);
  }

  /** Everything written; elements still open are closed. */
  String finished() {
    try {
      xml.writeEndDocument();
      xml.flush();
    } catch (XMLStreamException e) {
      throw unexpected(e);
    }
    return text.toString();
  }

  /** A coordinate with one decimal at most. */
  static String number(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** Attributes of text. */
  static String[] type(String size, String anchor, String colour) {
    return new String[] {
      "font-family", REGULAR, "font-size", size, "text-anchor", anchor, "fill", colour
    };
  }

  /** Attributes of bold text. */
  static String[] boldType(String size, String anchor, String colour) {
    return new String[] {
      "font-family",
      BOLD,
      "font-weight",
      "bold",
      "font-size",
      size,
      "text-anchor",
      anchor,
      "fill",
      colour
    };
  }

  private SvgWriter attributes(String... namesAndValues) {
    try {
      for (int i = 0; i < namesAndValues.length; i += 2) {
        if (namesAndValues[i].equals("xmlns")) {
          xml.writeDefaultNamespace(namesAndValues[i + 1]);
        } else {
          xml.writeAttribute(namesAndValues[i], XmlText.legal(namesAndValues[i + 1]));
        }
      }
    } catch (XMLStreamException e) {
      throw unexpected(e);
    }
    return this;
  }

  private static IllegalStateException unexpected(XMLStreamException e) {
    return new IllegalStateException("cannot write to memory", e);
  }
}
