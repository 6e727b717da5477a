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
 * Looks at a GPX file before the library does: a document type is refused, since it could name
 * other files or swell without end, and so are elements nested too deeply.
 */
final class GpxProlog {
  private static final int DEEPEST = 100;

  private GpxProlog() {}

  /** The version that the gpx element states; 1.1 unless it is 1.0. */
  static Version version(Path file, LayerProblems problems) throws IOException {
    XMLInputFactory factory = new JavasOwnXml().xmlInputFactory();
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
          String stated = xml.getAttributeValue(null, "version");
          if (stated == null) {
            throw problems.refused(
                "is no valid GPX (its gpx element states no version)",
                "write version=\"1.1\" into that element");
          }
          Version version = "1.0".equals(stated) ? Version.V10 : Version.V11;
          refuseIfDeep(xml, problems);
          return version;
        }
      }
      throw problems.refused("has no gpx element", "get a whole copy");
    } catch (XMLStreamException e) {
      throw problems.refused(
          "is no valid XML (" + LayerProblems.detail(e) + ")", "get a whole copy", e);
    }
  }

  /** The library keeps extensions as a tree and walks through it by recursion. */
  private static void refuseIfDeep(XMLStreamReader xml, LayerProblems problems) {
    int depth = 1;
    try {
      while (xml.hasNext()) {
        int event = xml.next();
        if (event == XMLStreamConstants.START_ELEMENT) {
          depth++;
        } else if (event == XMLStreamConstants.END_ELEMENT) {
          depth--;
        }
        if (depth > DEEPEST) {
          throw problems.refused(
              "has elements nested more than " + DEEPEST + " deep", "take its extensions out");
        }
      }
    } catch (XMLStreamException e) {
      // The library meets the same fault, and its words for it are those of the format.
    }
  }
}
