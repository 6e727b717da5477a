package org.meadowmark.core.read.gpx;

import io.jenetics.jpx.GPX.Version;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Path;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.meadowmark.core.read.LayerProblems;

/**
 * Looks at a GPX file up to its first element, before the library does: a document type is refused,
 * since it could name other files or swell without end.
 */
final class GpxProlog {
  private GpxProlog() {}

  /** The version that the gpx element states; 1.1 where it states none. */
  static Version version(Path file, LayerProblems problems) throws IOException {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    try (Reader text = XmlText.open(file, problems)) {
      XMLStreamReader xml = factory.createXMLStreamReader(text);
      while (xml.hasNext()) {
        int event = xml.next();
        if (event == XMLStreamConstants.DTD) {
          throw problems.refused(
              "has a document type (DOCTYPE), which GPX does not need", "take that line out");
        }
        if (event == XMLStreamConstants.START_ELEMENT) {
          if (!xml.getLocalName().equals("gpx")) {
            throw problems.refused(
                "is XML but no GPX (its outermost element is "
                    + LayerProblems.oneLine(xml.getLocalName())
                    + ")",
                "give a GPX file");
          }
          return "1.0".equals(xml.getAttributeValue(null, "version")) ? Version.V10 : Version.V11;
        }
      }
      throw problems.refused("has no gpx element", "get a whole copy");
    } catch (XMLStreamException e) {
      throw problems.refused(
          "is no valid XML (" + LayerProblems.detail(e) + ")", "get a whole copy", e);
    }
  }
}
