package org.meadowmark.core.write.proposal;

import com.openhtmltopdf.extend.FSStream;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
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
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Lays the page of a sheet out as a tagged PDF. The same page gives the same bytes. */
final class SheetPdf {
  private static final String FONT_PROTOCOL = "meadowmark-font";
  private static final String BOLD = FONT_PROTOCOL + ":bold";
  private static final String REGULAR = FONT_PROTOCOL + ":regular";

  /** For the pictures only: their library takes typefaces from nowhere else. */
  private static final String FONT_FACE = "@font-face { font-family: '%s'; src: url(%s); }\n";

  private static final int NORMAL_WEIGHT = 400;
  private static final int BOLD_WEIGHT = 700;

  private final PdfFont font = new PdfFont();
  private final BundledFontMapper fonts = new BundledFontMapper(font.face(false));
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
    dropBrowserHints(document);
    useFont(document);
    return fonts.during(() -> laidOut(document));
  }

  private byte[] laidOut(Document document) throws IOException {
    try (PDDocument pdf = new PDDocument();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      PdfRendererBuilder builder = new PdfRendererBuilder();
      builder.withW3cDocument(document, null);
      builder.usePDDocument(pdf);
      builder.useSVGDrawer(new BatikSVGDrawer());
      builder.usePdfUaAccessibility(true);
      builder.withProducer("Meadowmark");
      useFace(builder, pdf, NORMAL_WEIGHT, false);
      useFace(builder, pdf, BOLD_WEIGHT, true);
      builder.useProtocolsStreamImplementation(
          uri -> new FontStream(font.file(uri.equals(BOLD))), FONT_PROTOCOL);
      try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
        renderer.layout();
        renderer.createPDFWithoutClosing();
        forgetTime(pdf);
        pdf.save(bytes);
      }
      return bytes.toByteArray();
    }
  }

  private void useFace(PdfRendererBuilder builder, PDDocument pdf, int weight, boolean heavy)
      throws IOException {
    builder.useFont(
        new PDFontSupplier(font.embeddedIn(pdf, heavy)),
        PdfFont.FAMILY,
        weight,
        FontStyle.NORMAL,
        true);
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
        FONT_FACE.formatted(SvgWriter.REGULAR_FACE, REGULAR)
            + FONT_FACE.formatted(SvgWriter.BOLD_FACE, BOLD)
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

  /** The layout library would copy them among the facts about the document. */
  private static void dropBrowserHints(Document document) {
    NodeList metas = document.getElementsByTagName("meta");
    for (int i = metas.getLength() - 1; i >= 0; i--) {
      Element meta = (Element) metas.item(i);
      if (meta.getAttribute("name").equals("viewport")) {
        meta.getParentNode().removeChild(meta);
      }
    }
  }

  private void replaceUnprintable(Document document) {
    Node main = document.getElementsByTagName("main").item(0);
    PrintableText printable = new PrintableText(font);
    printable.replaceIn(main);
    if (printable.replaced().isEmpty()) {
      return;
    }
    Element note = document.createElementNS("http://www.w3.org/1999/xhtml", "p");
    note.setAttribute("class", "soft");
    note.setTextContent(text.get("fontNote", printable.replaced()));
    main.appendChild(note);
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
