package org.meadowmark.core.write.style;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.InventedSurvey;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.ResultTable.GeometryKind;
import org.meadowmark.core.write.table.ResultTables;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSInput;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** Checks the styles against the schema that the OGC published, and against the layers. */
class LayerStylesTest {
  private static final String LINKS = "xlink.xsd";

  /** The schema of links is not among the published ones at hand; no style has a link. */
  private static final String LINK_ATTRIBUTES =
      """
      <xsd:schema xmlns:xsd="http://www.w3.org/2001/XMLSchema"
          targetNamespace="http://www.w3.org/1999/xlink">
        <xsd:attributeGroup name="simpleAttrs"/>
      </xsd:schema>
      """;

  private static Schema schema;

  @TempDir private static Path folder;

  @BeforeAll
  static void loadSchemaAndWrite() throws Exception {
    SchemaFactory factory = SchemaFactory.newDefaultInstance();
    DOMImplementationLS maker =
        (DOMImplementationLS)
            DocumentBuilderFactory.newDefaultNSInstance()
                .newDocumentBuilder()
                .getDOMImplementation();
    factory.setResourceResolver(
        (type, namespace, publicId, systemId, base) -> {
          String name =
              systemId.startsWith("http://schemas.opengis.net/")
                  ? systemId.substring("http://schemas.opengis.net/".length())
                  : systemId.startsWith("http://www.w3.org/1999/xlink")
                      ? LINKS
                      : folderOf(namespace) + systemId;
          LSInput input = maker.createLSInput();
          input.setSystemId("http://schemas.opengis.net/" + name);
          input.setByteStream(new ByteArrayInputStream(published(name)));
          return input;
        });
    String main = "sld/1.0.0/StyledLayerDescriptor.xsd";
    schema =
        factory.newSchema(
            new StreamSource(
                new ByteArrayInputStream(published(main)), "http://schemas.opengis.net/" + main));
    LayerStyles.write(folder, InventedSurvey.survey());
  }

  private static String folderOf(String namespace) {
    return namespace.endsWith("/gml") ? "gml/2.1.2/" : "filter/1.0.0/";
  }

  private static byte[] published(String name) {
    if (name.equals(LINKS)) {
      return LINK_ATTRIBUTES.getBytes(StandardCharsets.UTF_8);
    }
    try (var in = LayerStylesTest.class.getResourceAsStream("/ogc/" + name)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new IllegalStateException(name, e);
    }
  }

  @Test
  void everyLayerWithAGeometryHasAStyleAndNoOther() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve(LayerStyles.FOLDER))) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(
              layers().stream().map(layer -> layer.name() + ".sld").toList());
    }
  }

  @Test
  void everyStyleKeepsToThePublishedSchema() throws Exception {
    for (ResultTable layer : layers()) {
      schema.newValidator().validate(new DOMSource(style(layer.name())));
    }
    Document broken = style("beds");
    Node rule = broken.getElementsByTagNameNS(SldDocument.SLD, "Rule").item(0);
    rule.appendChild(broken.createElementNS(SldDocument.SLD, "Rule"));
    assertThatThrownBy(() -> schema.newValidator().validate(new DOMSource(broken)))
        .isInstanceOf(SAXException.class);
  }

  @Test
  void everyFeatureIsDrawnByOneRuleWithASignThatFitsItsGeometry() throws Exception {
    for (ResultTable layer : layers()) {
      Document style = style(layer.name());
      List<Map<String, String>> rows = rows(layer);
      for (Map<String, String> row : rows) {
        assertThat(rulesFor(style, row)).as(layer.name() + " " + row).hasSize(1);
      }
      String symbolizer =
          switch (layer.geometryKind()) {
            case POINT -> "PointSymbolizer";
            case POLYGON, MULTIPOLYGON -> "PolygonSymbolizer|LineSymbolizer";
            default -> "LineSymbolizer";
          };
      NodeList all = style.getElementsByTagNameNS(SldDocument.SLD, "*");
      for (int i = 0; i < all.getLength(); i++) {
        if (all.item(i).getLocalName().endsWith("Symbolizer")) {
          assertThat(all.item(i).getLocalName()).as(layer.name()).matches(symbolizer);
        }
      }
    }
  }

  @Test
  void filtersNameColumnsOfTheirLayer() throws Exception {
    for (ResultTable layer : layers()) {
      List<String> columns = layer.columns().stream().map(Column::name).toList();
      NodeList names = style(layer.name()).getElementsByTagNameNS(SldDocument.OGC, "PropertyName");
      for (int i = 0; i < names.getLength(); i++) {
        assertThat(columns).as(layer.name()).contains(names.item(i).getTextContent());
      }
    }
  }

  @Test
  void classesThatDoNotOccurHaveARuleToo() throws Exception {
    for (String severity :
        InventedSurvey.references().severityClasses().stream().map(c -> c.key()).toList()) {
      assertThat(rulesFor(style("beds"), Map.of("severity_class", severity))).hasSize(1);
    }
    assertThat(rulesFor(style("beds"), Map.of("severity_class", "no such class"))).isEmpty();
  }

  @Test
  void rankChoosesTheRuleOfASegment() throws Exception {
    Document style = style("segments");
    assertThat(titles(style, Map.of("rank", "5"))).containsExactly("Rank 1 to 5");
    assertThat(titles(style, Map.of("rank", "6"))).containsExactly("Rank 6 to 20");
    assertThat(titles(style, Map.of("rank", "21"))).containsExactly("Rank below 20");
    assertThat(titles(style, Map.of())).containsExactly("No rank");
  }

  @Test
  void aNameFromTheInputIsEscaped() throws Exception {
    String hostile = "\"><script>&\u0001";
    String sld =
        SldDocument.of(
            LayerStyle.of(
                "scars",
                hostile,
                StyleRule.of(
                    hostile,
                    new Condition.Equal("cause", hostile),
                    new Symbol.Line("#000000", 1))));
    assertThat(sld).doesNotContain("<script");
    Document document = parsed(sld);
    schema.newValidator().validate(new DOMSource(document));
    assertThat(document.getElementsByTagNameNS(SldDocument.OGC, "Literal").item(0).getTextContent())
        .isEqualTo("\"><script>&\uFFFD");
  }

  private static List<ResultTable> layers() {
    return ResultTables.of(InventedSurvey.survey()).stream()
        .filter(table -> table.geometryKind() != GeometryKind.NONE)
        .toList();
  }

  private static List<Map<String, String>> rows(ResultTable layer) {
    List<Map<String, String>> rows = new ArrayList<>();
    for (ResultTable.Row row : layer.rows()) {
      Map<String, String> values = new LinkedHashMap<>();
      for (int i = 0; i < layer.columns().size(); i++) {
        if (row.values().get(i) != null) {
          values.put(layer.columns().get(i).name(), row.values().get(i).toString());
        }
      }
      rows.add(values);
    }
    return rows;
  }

  private static Document style(String layer) throws Exception {
    return parsed(
        Files.readString(
            folder.resolve(LayerStyles.FOLDER).resolve(layer + ".sld"), StandardCharsets.UTF_8));
  }

  private static Document parsed(String sld) throws Exception {
    return DocumentBuilderFactory.newDefaultNSInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(sld)));
  }

  private static List<String> titles(Document style, Map<String, String> row) {
    return rulesFor(style, row).stream()
        .map(rule -> rule.getElementsByTagNameNS(SldDocument.SLD, "Title").item(0))
        .map(Node::getTextContent)
        .toList();
  }

  /**
   * The rules that the standard applies to a feature: those that fit, else the ones that say so.
   */
  private static List<Element> rulesFor(Document style, Map<String, String> row) {
    List<Element> fitting = new ArrayList<>();
    List<Element> otherwise = new ArrayList<>();
    NodeList rules = style.getElementsByTagNameNS(SldDocument.SLD, "Rule");
    for (int i = 0; i < rules.getLength(); i++) {
      Element rule = (Element) rules.item(i);
      if (rule.getElementsByTagNameNS(SldDocument.SLD, "ElseFilter").getLength() > 0) {
        otherwise.add(rule);
      } else if (fits(rule, row)) {
        fitting.add(rule);
      }
    }
    return fitting.isEmpty() ? otherwise : fitting;
  }

  private static boolean fits(Element rule, Map<String, String> row) {
    NodeList names = rule.getElementsByTagNameNS(SldDocument.OGC, "PropertyName");
    if (names.getLength() == 0) {
      return true;
    }
    String value = row.get(names.item(0).getTextContent());
    NodeList literals = rule.getElementsByTagNameNS(SldDocument.OGC, "Literal");
    if (value == null) {
      return false;
    }
    if (literals.getLength() == 1) {
      return value.equals(literals.item(0).getTextContent());
    }
    long number = Long.parseLong(value);
    return number >= Long.parseLong(literals.item(0).getTextContent())
        && number <= Long.parseLong(literals.item(1).getTextContent());
  }
}
