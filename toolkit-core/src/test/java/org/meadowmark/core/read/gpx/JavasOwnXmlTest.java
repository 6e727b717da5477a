package org.meadowmark.core.read.gpx;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.jenetics.jpx.XMLProvider;
import java.io.StringReader;
import java.io.StringWriter;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import javax.xml.stream.XMLStreamWriter;
import org.junit.jupiter.api.Test;

class JavasOwnXmlTest {
  /** What a program that embeds the toolkit may bring, and Spark does. */
  @Test
  void isTakenWhateverOtherLibraryIsAskedFor() throws XMLStreamException {
    String name = XMLOutputFactory.class.getName();
    System.setProperty(name, "no.such.Factory");
    try {
      assertThatThrownBy(XMLOutputFactory::newFactory).hasMessageContaining("no.such.Factory");
      StringWriter written = new StringWriter();
      XMLStreamWriter xml =
          XMLProvider.provider().xmlOutputFactory().createXMLStreamWriter(written);
      xml.writeStartDocument("UTF-8", "1.0");
      xml.close();
      assertThat(written).hasToString("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
    } finally {
      System.clearProperty(name);
    }
  }

  @Test
  void knowsNoEntityOfAFile() {
    assertThat(text(XMLInputFactory.newDefaultFactory())).isEqualTo("expanded");
    assertThat(text(XMLProvider.provider().xmlInputFactory())).doesNotContain("expanded");
  }

  private static String text(XMLInputFactory factory) {
    StringBuilder text = new StringBuilder();
    try {
      XMLStreamReader xml =
          factory.createXMLStreamReader(
              new StringReader("<!DOCTYPE a [<!ENTITY e \"expanded\">]><a>&e;</a>"));
      while (xml.hasNext()) {
        if (xml.next() == XMLStreamConstants.CHARACTERS) {
          text.append(xml.getText());
        }
      }
    } catch (XMLStreamException e) {
      text.append("refused");
    }
    return text.toString();
  }
}
