package org.meadowmark.core.write.proposal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TimeZone;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.rank.zone.Zone;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class ProposalSheetsTest {
  private static final String SCRIPT = "<script>alert(1)</script>";

  @TempDir Path folder;

  private Path html() {
    return folder.resolve("proposals/Z1.html");
  }

  private Path pdf() {
    return folder.resolve("proposals/Z1.pdf");
  }

  private Document write(ZoneSheet sheet) throws Exception {
    ProposalSheets.write(folder, List.of(sheet));
    DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
    factory.setNamespaceAware(true);
    return factory.newDocumentBuilder().parse(html().toFile());
  }

  private String pdfText() throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf().toFile())) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  private static List<Element> elements(Document page, String name) {
    NodeList nodes = page.getElementsByTagNameNS("*", name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      elements.add((Element) nodes.item(i));
    }
    return elements;
  }

  private static String words(Document page) {
    return page.getElementsByTagName("main").item(0).getTextContent().replaceAll("\\s+", " ");
  }

  private static ZoneSheet named(String survey, String channel) {
    return InventedSheets.sheet(
        InventedSheets.survey(survey, 60, InventedSheets.UTM_21N_WKT), channel);
  }

  @Test
  void pageAndPdfSayTheSame() throws Exception {
    Document page = write(InventedSheets.full());
    Look.at(html(), "Z1");
    Look.at(pdf(), "Z1");
    String[] said = {
      "Zone Z1: Heron Cut, 612 m",
      "Tern Sound 2025, surveyed 2025-06-14",
      "not a permit",
      "Slow-speed zone: regulatory mark with a circle",
      "No-anchor zone: regulatory mark with a circle",
      "Or instead: shallow-water warning: regulatory mark with an open-faced diamond",
      "83.1 % of the scar length in the zone: propeller",
      "Legal basis: missing.",
      "Legal basis: Harbour order 12 of the invented Tern Sound council",
      "Depth against draft missing no depth layer was given",
      "118–143 m/ha",
      "0.31 service hectare-years (0.18 with short and 0.52 with long recovery)",
      "40 km/h (21.6 kn)",
      "3.2 min",
      "no other choice within these limits covers more",
      "needs 3.2 minutes more",
      "Missing in the evidence: Depth against draft; Scarred again",
      "The limits were 3 zones and 2.00 km in total.",
      "Boat work and diving are for trained crews",
      "check the depth at each of them",
      "scars.gpkg (60303ae2)",
      "20250614",
      "Not for navigation"
    };
    String pageWords = words(page).replaceAll("[\\u00A0\\u202F]", " ");
    String pdfWords = pdfText().replaceAll("[\\u00A0\\u202F]", " ");
    for (String words : said) {
      assertThat(pdfWords).contains(words);
      assertThat(pageWords.replace(" ", "")).contains(words.replace(" ", ""));
    }
  }

  /** Positions: PROJ through gdaltransform (GDAL 3.6.2) gives 30.0079433, -55.0207292 for M1. */
  @Test
  void positionsAreInDegreesAndOnTheGrid() throws Exception {
    write(InventedSheets.full());
    assertThat(pdfText().replaceAll("[\\u00A0\\u202F]", " "))
        .contains("Z1-M1 30° 00.477′ N 055° 01.244′ W 690 900 3 321 315 247°")
        .contains("degrees on WGS 84, grid EPSG:32621");
  }

  @Test
  void namesAreTextWhateverTheyHold() throws Exception {
    Zone zone = InventedSheets.zone("Z1");
    SheetSurvey survey =
        InventedSheets.survey("A & B \"survey\" " + SCRIPT, 60, InventedSheets.UTM_21N_WKT);
    Document page =
        write(
            new ZoneSheet(
                survey,
                InventedSheets.plan(List.of(zone)),
                zone,
                SCRIPT,
                List.of(EvidenceRow.of(SCRIPT, "</td>" + SCRIPT, "<b>", "{{title}} &amp; ]]>")),
                List.of("<!-- " + SCRIPT)));
    assertThat(elements(page, "script")).isEmpty();
    assertThat(elements(page, "b")).isEmpty();
    assertThat(elements(page, "title").get(0).getTextContent())
        .isEqualTo("Zone Z1: " + SCRIPT + ", 612\u00A0m");
    assertThat(words(page))
        .contains("A & B \"survey\" " + SCRIPT, "{{title}} &amp; ]]>", "<!-- " + SCRIPT);
    assertThat(Files.readString(html())).doesNotContain("<script");
    assertThat(pdfText()).contains(SCRIPT, "{{title}} &amp; ]]>");
  }

  @Test
  void lettersOutsideEnglishArePrinted() throws Exception {
    write(named("Žluťoučký Fjörd", "Passe d’Été – Zatoka Łebska, Großes Tief, Όρμος, Бухта"));
    assertThat(pdfText())
        .contains("Žluťoučký Fjörd", "Passe d’Été – Zatoka Łebska, Großes Tief, Όρμος, Бухта")
        .doesNotContain("□", "lacks");
  }

  @Test
  void lettersThatTheTypefaceLacksAreReplacedInThePdfAndStated() throws Exception {
    Document page = write(named("Survey", "漢 Cut \uD83D\uDE00 ش"));
    assertThat(words(page)).contains("漢 Cut \uD83D\uDE00 ش").doesNotContain("lacks");
    assertThat(pdfText())
        .contains("Zone Z1: □ Cut □ □", "lacks are shown as □: U+0634, U+6F22, U+1F600.");
  }

  @Test
  void charactersThatXmlForbidsDoNotBreakThePage() throws Exception {
    Document page = write(named("a\u0000b\uD800c", "bell\u0007\uFFFF"));
    assertThat(words(page)).contains("a\uFFFDb\uFFFDc", "bell\uFFFD\uFFFD");
    assertThat(pdfText()).contains("a□b□c");
  }

  @Test
  void theSameInputGivesTheSameBytesInEveryLocaleAndZone() throws Exception {
    ProposalSheets.write(folder, List.of(InventedSheets.full()));
    Path again = Files.createDirectory(folder.resolve("again"));
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
      ProposalSheets.write(again, List.of(InventedSheets.full()));
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
    assertThat(again.resolve("proposals/Z1.html")).hasSameBinaryContentAs(html());
    assertThat(again.resolve("proposals/Z1.pdf")).hasSameBinaryContentAs(pdf());
  }

  @ParameterizedTest
  @EnumSource
  void aUsualSheetTakesTwoPagesOfEitherPaper(Paper paper) throws Exception {
    ProposalSheets.write(folder, List.of(InventedSheets.full()), paper);
    Look.at(pdf(), paper.name());
    try (PDDocument document = Loader.loadPDF(pdf().toFile())) {
      assertThat(document.getNumberOfPages()).isEqualTo(2);
      float expected = paper == Paper.A4 ? 297 / 25.4f * 72 : 11 * 72;
      assertThat(document.getPage(0).getMediaBox().getHeight())
          .isCloseTo(expected, org.assertj.core.data.Offset.offset(0.5f));
    }
  }

  @Test
  void thePdfIsTaggedNamedAndHasItsTypefaceInside() throws Exception {
    write(InventedSheets.full());
    try (PDDocument document = Loader.loadPDF(pdf().toFile())) {
      assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
      assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
      assertThat(document.getDocumentInformation().getTitle()).startsWith("Zone Z1: Heron Cut");
      assertThat(document.getDocumentInformation().getCreationDate()).isNull();
      int fonts = 0;
      for (PDPage page : document.getPages()) {
        for (COSName name : page.getResources().getFontNames()) {
          PDFont font = page.getResources().getFont(name);
          assertThat(font.isEmbedded()).as(font.getName()).isTrue();
          assertThat(font.getName()).contains("+Lato-");
          fonts++;
        }
      }
      assertThat(fonts).isGreaterThan(1);
    }
  }

  /** The PDF library keeps a list of the machine's fonts there if it ever looks for them. */
  @Test
  void noFontsOfTheMachineAreSearched() throws Exception {
    Path cache = Files.createDirectory(folder.resolve("cache"));
    System.setProperty("pdfbox.fontcache", cache.toString());
    try {
      write(InventedSheets.full());
    } finally {
      System.clearProperty("pdfbox.fontcache");
    }
    assertThat(cache).isEmptyDirectory();
  }

  @Test
  void thePageNeedsNothingElse() throws Exception {
    write(InventedSheets.full());
    assertThat(
            Files.readString(html())
                .replace("http://www.w3.org/1999/xhtml", "")
                .replace(SvgWriter.NAMESPACE, ""))
        .doesNotContain("http:", "https:", "@import", "src=", "<link", "<script", "javascript");
  }

  private static Set<String> ids(Document page) {
    Set<String> ids = new HashSet<>();
    for (Element element : elements(page, "*")) {
      String id = element.getAttribute("id");
      assertThat(id.isEmpty() || ids.add(id)).as(id).isTrue();
    }
    return ids;
  }

  @Test
  void tablesPicturesAndHeadingsCanBeReadAloud() throws Exception {
    Document page = write(InventedSheets.full());
    assertThat(page.getDocumentElement().getAttribute("lang")).isEqualTo("en");
    List<Element> tables =
        elements(page, "table").stream()
            .filter(table -> !table.getAttribute("role").equals("presentation"))
            .toList();
    assertThat(tables).hasSize(3);
    for (Element table : tables) {
      boolean named = ids(page).contains(table.getAttribute("aria-labelledby"));
      assertThat(named || table.getElementsByTagName("caption").getLength() == 1).isTrue();
    }
    assertThat(elements(page, "th"))
        .isNotEmpty()
        .allMatch(cell -> Set.of("col", "row").contains(cell.getAttribute("scope")));
    Set<String> ids = ids(page);
    List<Element> pictures = elements(page, "svg");
    assertThat(pictures).hasSize(4);
    for (Element picture : pictures) {
      assertThat(picture.getAttribute("role")).isEqualTo("img");
      assertThat(ids).contains(picture.getAttribute("aria-labelledby").split(" "));
    }
    assertThat(elements(page, "h1")).hasSize(1);
  }

  @Test
  void whatIsNotThereIsSaid() throws Exception {
    Zone full = InventedSheets.zone("Z1");
    Zone bare =
        new Zone(
            "Z1",
            full.segmentIds(),
            full.geometry(),
            full.lengthMetres(),
            0,
            0,
            java.util.Map.of(),
            new org.meadowmark.core.rank.zone.ZoneWorth(
                0,
                0,
                java.util.OptionalDouble.empty(),
                java.util.OptionalDouble.empty(),
                java.util.OptionalDouble.empty(),
                "",
                List.of(),
                List.of()),
            List.of(),
            List.of(),
            List.of());
    Document page =
        write(
            new ZoneSheet(
                InventedSheets.survey("Survey", 0, ""),
                InventedSheets.plan(List.of(bare)),
                bare,
                "Cut",
                List.of(),
                List.of()));
    assertThat(words(page))
        .contains(
            "No device is proposed",
            "No positions are proposed",
            "No evidence was given",
            "hectare-years is missing",
            "No gap is known",
            "Its place on Earth is not known");
    assertThat(pdfText()).contains("No device is proposed");
  }

  @Test
  void ofManyScarsTheLongestAreDrawnAndThatIsSaid() throws Exception {
    SheetSurvey survey = InventedSheets.survey("Survey", 50_000, InventedSheets.UTM_21N_WKT);
    Document page = write(InventedSheets.sheet(survey, "Cut"));
    Look.at(html(), "many");
    Look.at(pdf(), "many");
    assertThat(words(page))
        .containsPattern("Of 3\\d\\u202F\\d{3} scars in view, the 2\\u202F500 longest are drawn");
    assertThat(Files.size(html())).isLessThan(600_000);
    assertThat(Files.size(pdf())).isLessThan(600_000);
  }

  @Test
  void nothingIsReplacedAndNothingHalfIsLeft() throws Exception {
    Path existing = folder.resolve("proposals/Z2.pdf");
    Files.createDirectory(existing.getParent());
    Files.writeString(existing, "mine");
    ZoneSheet first = InventedSheets.full();
    ZoneSheet second =
        new ZoneSheet(
            first.survey(),
            first.plan(),
            InventedSheets.zone("Z2"),
            first.channel(),
            first.evidence(),
            first.uncertainty());
    assertThatExceptionOfType(OutputExistsException.class)
        .isThrownBy(() -> ProposalSheets.write(folder, List.of(first, second)))
        .withMessageContaining("Z2.pdf: exists already");
    try (Stream<Path> files = Files.list(existing.getParent())) {
      assertThat(files).containsExactly(existing);
    }
    assertThat(existing).hasContent("mine");
  }

  @Test
  void aMissingFolderIsRefused() {
    assertThatExceptionOfType(OutputFailedException.class)
        .isThrownBy(
            () -> ProposalSheets.write(folder.resolve("no"), List.of(InventedSheets.full())));
  }

  @Test
  void noZoneMeansNoSheet() {
    ProposalSheets.write(folder, List.of());
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void twoSheetsOfOneZoneAreRefused() {
    ZoneSheet sheet = InventedSheets.full();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ProposalSheets.write(folder, List.of(sheet, sheet)));
    assertThat(folder).isEmptyDirectory();
  }
}
