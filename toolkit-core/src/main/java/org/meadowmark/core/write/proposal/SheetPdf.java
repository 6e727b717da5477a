package org.meadowmark.core.write.proposal;

import com.openhtmltopdf.extend.FSStream;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Lays the page of a sheet out as a tagged PDF. The same page gives the same bytes. */
final class SheetPdf {
  private static final String FONT_PROTOCOL = "meadowmark-font";
  private static final String BOLD = FONT_PROTOCOL + ":bold";
  private static final String REGULAR = FONT_PROTOCOL + ":regular";
  private static final String FONT_FACE =
      "@font-face { font-family: %s; font-weight: %s; src: url(%s);"
          + " -fs-font-subset: subset; -fs-pdf-font-embed: embed; }\n";

  private final PdfFont font = new PdfFont();
  private final SheetText text;

  /** A typeface from memory; nothing else can be asked for. */
  private record FontStream(byte[] content) implements FSStream {
    @Override
    public InputStream getStream() {
      return new ByteArrayInputStream(content);
    }

    @Override
    public Reader getReader() {
      return new InputStreamReader(getStream(), StandardCharsets.ISO_8859_1);
    }
  }

  SheetPdf(SheetText text) {
    this.text = text;
  }

  /**
   * Makes the PDF.
   *
   * @param page XHTML of the sheet
   * @throws IOException if the PDF cannot be put together
   */
  byte[] of(String page) throws IOException {
    // The library logs to the error stream unless it is told not to.
    XRLog.setLoggingEnabled(false);
    Document document = parsed(page);
    replaceUnprintable(document);
    describePictures(document);
    useFont(document);
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.withW3cDocument(document, null);
    builder.useSVGDrawer(new BatikSVGDrawer());
    builder.usePdfUaAccessibility(true);
    builder.withProducer("Meadowmark");
    builder.useProtocolsStreamImplementation(
        uri -> new FontStream(uri.equals(BOLD) ? font.bold() : font.regular()), FONT_PROTOCOL);
    try (PdfBoxRenderer renderer = builder.buildPdfRenderer();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      renderer.layout();
      renderer.createPDFWithoutClosing();
      PDDocument pdf = renderer.getPdfDocument();
      forgetTime(pdf);
      pdf.save(bytes);
      return bytes.toByteArray();
    }
  }

  private static Document parsed(String page) throws IOException {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setNamespaceAware(true);
      return factory.newDocumentBuilder().parse(new InputSource(new StringReader(page)));
    } catch (ParserConfigurationException | SAXException e) {
      throw new IOException("the page is not well formed: " + e.getMessage(), e);
    }
  }

  private void useFont(Document document) {
    Element style = (Element) document.getElementsByTagName("style").item(0);
    style.setTextContent(
        FONT_FACE.formatted(PdfFont.FAMILY, "normal", REGULAR)
            + FONT_FACE.formatted(PdfFont.FAMILY, "bold", BOLD)
            + FONT_FACE.formatted("'" + SvgWriter.REGULAR_FACE + "'", "normal", REGULAR)
            + FONT_FACE.formatted("'" + SvgWriter.BOLD_FACE + "'", "normal", BOLD)
            + style.getTextContent());
  }

  /** A tagged PDF wants its words for a picture in an attribute that SVG does not have. */
  private static void describePictures(Document document) {
    NodeList pictures = document.getElementsByTagNameNS(SvgWriter.NAMESPACE, "svg");
    for (int i = 0; i < pictures.getLength(); i++) {
      Element picture = (Element) pictures.item(i);
      NodeList description = picture.getElementsByTagNameNS(SvgWriter.NAMESPACE, "desc");
      NodeList title = picture.getElementsByTagNameNS(SvgWriter.NAMESPACE, "title");
      NodeList words = description.getLength() > 0 ? description : title;
      picture.setAttribute("alt", words.item(0).getTextContent());
    }
  }

  private void replaceUnprintable(Document document) {
    PrintableText printable = new PrintableText(font);
    printable.replaceIn(document.getElementsByTagName("main").item(0));
    if (printable.replaced().isEmpty()) {
      return;
    }
    Element note = document.createElementNS("http://www.w3.org/1999/xhtml", "p");
    note.setAttribute("class", "soft");
    note.setTextContent(text.get("fontNote", printable.replaced()));
    document
        .getElementsByTagName("main")
        .item(0)
        .getLastChild()
        .getPreviousSibling()
        .appendChild(note);
  }

  /** Dates and the identifier made from them are optional, and would differ at every run. */
  private static void forgetTime(PDDocument pdf) throws IOException {
    pdf.setDocumentId(0L);
    pdf.getDocumentInformation().getCOSObject().removeItem(COSName.CREATION_DATE);
    pdf.getDocumentInformation().getCOSObject().removeItem(COSName.MOD_DATE);
    PDMetadata metadata = pdf.getDocumentCatalog().getMetadata();
    if (metadata != null) {
      String undated =
          new String(metadata.toByteArray(), StandardCharsets.UTF_8)
              .replaceAll("<xmp:(CreateDate|ModifyDate|MetadataDate)>[^<]*</xmp:\\1>", "");
      metadata.importXMPMetadata(undated.getBytes(StandardCharsets.UTF_8));
    }
  }
}
