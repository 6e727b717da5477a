package org.meadowmark.core.write;

import java.io.StringWriter;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * What a GeoPackage says about itself, in Dublin Core terms, so that a file that was passed on
 * alone still tells where its figures come from. It holds no time of the run.
 *
 * @param title name of the survey
 * @param surveyed day of the survey
 * @param description what the layers are
 * @param coordinates the reference system in words
 * @param provenance program with its version, and where to read more
 */
public record GeoPackageAbout(
    String title,
    Optional<LocalDate> surveyed,
    String description,
    String coordinates,
    String provenance) {
  /** The vocabulary: DCMI Metadata Terms. */
  static final String STANDARD = "http://purl.org/dc/terms/";

  /**
   * Takes the words as they are; what XML forbids is replaced when they are written.
   *
   * @param title name of the survey
   * @param surveyed day of the survey
   * @param description what the layers are
   * @param coordinates the reference system in words
   * @param provenance program with its version, and where to read more
   * @throws NullPointerException if anything is null
   */
  public GeoPackageAbout {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(surveyed, "surveyed");
    Objects.requireNonNull(description, "description");
    Objects.requireNonNull(coordinates, "coordinates");
    Objects.requireNonNull(provenance, "provenance");
  }

  /** The terms as XML. */
  String xml() {
    StringWriter text = new StringWriter();
    try {
      XMLStreamWriter xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
      xml.writeStartElement("metadata");
      xml.writeNamespace("dcterms", STANDARD);
      term(xml, "title", title);
      if (surveyed.isPresent()) {
        term(xml, "temporal", surveyed.get().toString());
      }
      term(xml, "description", description);
      term(xml, "spatial", coordinates);
      term(xml, "provenance", provenance);
      xml.writeEndElement();
    } catch (XMLStreamException e) {
      throw new IllegalStateException("cannot write to memory", e);
    }
    return text.toString();
  }

  private static void term(XMLStreamWriter xml, String name, String words)
      throws XMLStreamException {
    xml.writeStartElement("dcterms", name, STANDARD);
    xml.writeCharacters(XmlText.legal(words));
    xml.writeEndElement();
  }
}
