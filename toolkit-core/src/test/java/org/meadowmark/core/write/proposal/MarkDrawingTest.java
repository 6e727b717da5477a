package org.meadowmark.core.write.proposal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.meadowmark.core.rank.zone.MarkShape;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Shapes and colours after 33 CFR 62.33 (regulatory marks) and 62.35 (mooring buoys). */
class MarkDrawingTest {
  private static final Pattern POINT = Pattern.compile("(-?[0-9.]+) (-?[0-9.]+)");

  private static List<Element> parts(MarkShape shape) throws Exception {
    String svg = MarkDrawing.buoy(shape, "m", SheetText.english());
    NodeList all =
        DocumentBuilderFactory.newDefaultInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(svg)))
            .getElementsByTagName("*");
    List<Element> parts = new ArrayList<>();
    for (int i = 0; i < all.getLength(); i++) {
      parts.add((Element) all.item(i));
    }
    return parts;
  }

  private static List<Element> filled(List<Element> parts, String colour) {
    return parts.stream().filter(part -> part.getAttribute("fill").equals(colour)).toList();
  }

  private static List<Element> orangeOutlines(List<Element> parts) {
    return parts.stream()
        .filter(part -> part.getAttribute("stroke").equals(MapColours.MARK_ORANGE))
        .toList();
  }

  private static double[] heights(Element path) {
    double top = Double.MAX_VALUE;
    double bottom = -Double.MAX_VALUE;
    Matcher points = POINT.matcher(path.getAttribute("d"));
    while (points.find()) {
      top = Math.min(top, Double.parseDouble(points.group(2)));
      bottom = Math.max(bottom, Double.parseDouble(points.group(2)));
    }
    return new double[] {top, bottom};
  }

  @ParameterizedTest
  @EnumSource(
      names = {
        "DANGER_DIAMOND",
        "EXCLUSION_DIAMOND",
        "RESTRICTION_CIRCLE",
        "INFORMATION_RECTANGLE"
      })
  void aRegulatoryBuoyIsWhiteWithTwoOrangeBands(MarkShape shape) throws Exception {
    List<Element> parts = parts(shape);
    double[] body = heights(filled(parts, MapColours.WHITE).get(0));
    List<Element> bands = filled(parts, MapColours.MARK_ORANGE);
    assertThat(bands).hasSize(2);
    double tall = body[1] - body[0];
    assertThat(heights(bands.get(0))[0] - body[0]).isBetween(0.0, tall / 5);
    assertThat(body[1] - heights(bands.get(1))[1]).isBetween(0.0, tall / 10);
    assertThat(filled(parts, MapColours.MARK_BLUE)).isEmpty();
  }

  @Test
  void eachShapeIsItsOwn() throws Exception {
    List<Element> danger = orangeOutlines(parts(MarkShape.DANGER_DIAMOND));
    assertThat(danger).hasSize(1);
    assertThat(danger.get(0).getAttribute("fill")).isEqualTo("none");
    assertThat(danger.get(0).getAttribute("d")).matches("M[^LZ]+(L[^LZ]+){3}Z");
    assertThat(orangeOutlines(parts(MarkShape.EXCLUSION_DIAMOND)))
        .extracting(Element::getTagName)
        .containsExactly("path", "line", "line");
    assertThat(orangeOutlines(parts(MarkShape.RESTRICTION_CIRCLE)))
        .extracting(Element::getTagName)
        .containsExactly("circle");
    assertThat(orangeOutlines(parts(MarkShape.INFORMATION_RECTANGLE)))
        .extracting(Element::getTagName)
        .containsExactly("rect");
  }

  @Test
  void aMooringBuoyIsWhiteWithOneBlueBandInTheMiddle() throws Exception {
    List<Element> parts = parts(MarkShape.MOORING_BUOY);
    double[] body = heights(filled(parts, MapColours.WHITE).get(0));
    List<Element> bands = filled(parts, MapColours.MARK_BLUE);
    assertThat(bands).hasSize(1);
    double[] band = heights(bands.get(0));
    assertThat((band[0] + band[1]) / 2)
        .isCloseTo((body[0] + body[1]) / 2, org.assertj.core.data.Offset.offset(5.0));
    assertThat(orangeOutlines(parts)).isEmpty();
    assertThat(filled(parts, MapColours.MARK_ORANGE)).isEmpty();
  }

  @Test
  void noMarkIsNotDrawn() {
    assertThat(MarkDrawing.buoy(MarkShape.NONE, "m", SheetText.english())).isEmpty();
  }

  @ParameterizedTest
  @EnumSource
  void everyShapeHasWordsAndASmallSign(MarkShape shape) {
    SvgWriter svg = new SvgWriter().open("g");
    MarkDrawing.symbol(svg, shape, 10, 10, 8);
    assertThat(svg.finished()).startsWith("<g><circle");
    assertThat(SheetText.english().get("legendMarker." + shape.name())).isNotBlank();
  }
}
