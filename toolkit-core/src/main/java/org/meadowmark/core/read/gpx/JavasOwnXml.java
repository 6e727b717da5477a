package org.meadowmark.core.read.gpx;

import io.jenetics.jpx.XMLProvider;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLOutputFactory;

/**
 * Java's own reading and writing of XML for GPX, whatever other libraries a program that embeds the
 * toolkit brings: the same track gives the same bytes everywhere, and nothing outside a file is
 * fetched.
 */
public final class JavasOwnXml extends XMLProvider {
  /** Made by the service loader. */
  public JavasOwnXml() {
    super();
  }

  @Override
  public XMLInputFactory xmlInputFactory() {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    return factory;
  }

  @Override
  public XMLOutputFactory xmlOutputFactory() {
    return XMLOutputFactory.newDefaultFactory();
  }

  @Override
  public DocumentBuilderFactory documentBuilderFactory() {
    return DocumentBuilderFactory.newDefaultInstance();
  }
}
