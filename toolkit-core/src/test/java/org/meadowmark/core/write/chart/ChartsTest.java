package org.meadowmark.core.write.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.data.category.CategoryDataset;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.meadowmark.core.measure.AreaMeasure;
import org.meadowmark.core.measure.AreaMeasure.Kind;
import org.meadowmark.core.measure.AreaMeasure.SeverityGrass;
import org.meadowmark.core.measure.Damage;
import org.meadowmark.core.measure.Fragmentation.Crossing;
import org.meadowmark.core.measure.Gap;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.rank.ChannelRanking;
import org.meadowmark.core.rank.RankedSegment;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.InventedSurvey;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class ChartsTest {
  private static final String LONG_NAME =
      "Cooperative seagrass stewardship and shallow-draft management zone of the upper"
          + " Thistledown Inlet and adjoining flats";

  /** Pictures of every case are left in the build folder to be looked at, most as SVG. */
  private static final Path GALLERY = Path.of("target", "chart-gallery");

  record Case(String name, AssessedSurvey survey) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Case> cases() {
    return Stream.of(
        new Case("small", InventedSurvey.survey()),
        new Case("realistic", survey(9, 400, 60, 1, false)),
        new Case("many", survey(55, 20_000, 400, 1, false)),
        new Case("long-names", survey(6, 40, 12, 1, true)),
        new Case("one-area", survey(1, 1, 1, 1, false)),
        new Case("enormous", survey(12, 300, 25, 5_000, false)),
        new Case("nothing", survey(0, 0, 0, 1, false)));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void drawsInkOnPaperAtTwicePointSize(Case each) {
    for (Picture picture : Charts.of(each.survey())) {
      BufferedImage image = picture.image();
      assertThat(image.getWidth()).isEqualTo(2 * picture.width());
      assertThat(image.getHeight()).isEqualTo(2 * picture.height());
      int[] pixels = pixels(image);
      long ink = Arrays.stream(pixels).filter(p -> p != ChartStyle.PAPER.getRGB()).count();
      assertThat((double) ink / pixels.length).as(picture.name()).isBetween(0.005, 0.6);
    }
  }

  @Test
  void whatIsDrawnIsWhatIsInTheFile() throws IOException {
    Path folder = Files.createDirectories(GALLERY.resolve("realistic"));
    for (Picture picture : Charts.of(survey(9, 400, 60, 1, false))) {
      assertThat(pixels(ImageIO.read(picture.writePng(folder).toFile())))
          .as(picture.name())
          .isEqualTo(pixels(picture.image()));
    }
  }

  @ParameterizedTest
  @MethodSource("cases")
  void drawsTheSameTextAndLinesAsSvgEveryTime(Case each) throws Exception {
    Path folder = Files.createDirectories(GALLERY.resolve(each.name()));
    List<Picture> again = Charts.of(each.survey());
    int place = 0;
    for (Picture picture : Charts.of(each.survey())) {
      String svg = Files.readString(picture.writeSvg(folder));
      assertThat(again.get(place++).svg()).isEqualTo(svg);
      Element root =
          DocumentBuilderFactory.newDefaultNSInstance()
              .newDocumentBuilder()
              .parse(new InputSource(new StringReader(svg)))
              .getDocumentElement();
      assertThat(root.getAttribute("viewBox"))
          .isEqualTo("0 0 " + picture.width() + " " + picture.height());
      NodeList texts = root.getElementsByTagNameNS("*", "text");
      assertThat(texts.getLength()).isPositive();
      for (int i = 0; i < texts.getLength(); i++) {
        Element text = (Element) texts.item(i);
        assertThat(text.getTextContent().isEmpty()).isEqualTo(!text.hasAttribute("textLength"));
      }
      String title = picture.chart().getTitle().getText();
      assertThat(
              IntStream.range(0, texts.getLength()).mapToObj(i -> texts.item(i).getTextContent()))
          .contains(title);
    }
  }

  private static int[] pixels(BufferedImage image) {
    return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
  }

  @Test
  void aNameFromTheInputIsTextInSvg() {
    Measurement all = InventedSurvey.measurement();
    AreaMeasure hostile =
        severities(
            InventedSurvey.area("1", "<script>alert(1)</script>\u0001&", 3, spread(5e5)),
            new Random(1));
    String svg =
        SeverityChart.of(
                InventedSurvey.with(
                    withAreas(all, List.of(hostile), List.of()),
                    InventedSurvey.ranking(),
                    List.of()))
            .svg();
    assertThat(svg).contains("&lt;script&gt;").doesNotContain("<script").doesNotContain("\u0001");
  }

  @Test
  void connectedAreaRunsFromTheSmallestCrossingDistanceToTheLargest() {
    Picture picture = ConnectivityChart.of(InventedSurvey.survey());
    XYDataset data = picture.chart().getXYPlot().getDataset();
    List<Crossing> crossings = InventedSurvey.measurement().whole().fragmentation().crossings();
    assertThat(data.getItemCount(0)).isEqualTo(crossings.size());
    for (int i = 0; i < crossings.size(); i++) {
      Crossing crossing = crossings.get(i);
      assertThat(data.getXValue(0, i)).isEqualTo(crossing.distanceMetres());
      assertThat(data.getYValue(0, i))
          .isEqualTo(crossing.before().orElseThrow().equivalentAreaHectares());
      assertThat(data.getYValue(1, i))
          .isEqualTo(crossing.after().orElseThrow().equivalentAreaHectares());
    }
  }

  @Test
  void severityBarsAddUpToMappedBedAndKeepUnknownApart() {
    Picture picture = SeverityChart.of(InventedSurvey.survey());
    assertThat(picture.chart().getTitle().getText()).isEqualTo(SeverityChart.TITLE);
    CategoryDataset data = picture.chart().getCategoryPlot().getDataset();
    assertThat(labels(data.getColumnKeys()))
        .containsExactly("Heron Bight", "outside every management area");
    assertThat(data.getValue(data.getRowIndex("Light"), 0).doubleValue()).isEqualTo(1.2);
    int unknown = data.getRowIndex("not surveyed: unknown");
    assertThat(data.getValue(unknown, 0).doubleValue()).isEqualTo(0.05);
    assertThat(data.getValue(unknown, 1).doubleValue()).isEqualTo(0.16);
  }

  @Test
  void severityWithoutManagementAreasIsOneBarForTheWhole() {
    Measurement all = InventedSurvey.measurement();
    Measurement undivided =
        withAreas(
            all,
            all.areas().stream().filter(a -> a.kind() != Kind.MANAGEMENT_AREA).toList(),
            all.gaps());
    CategoryDataset data =
        SeverityChart.of(InventedSurvey.with(undivided, InventedSurvey.ranking(), List.of()))
            .chart()
            .getCategoryPlot()
            .getDataset();
    assertThat(labels(data.getColumnKeys())).containsExactly("whole survey");
  }

  @Test
  void segmentBarsRunByRankAndStackToTheRate() {
    Picture picture = SegmentChart.of(InventedSurvey.survey());
    CategoryDataset data = picture.chart().getCategoryPlot().getDataset();
    assertThat(labels(data.getColumnKeys()))
        .containsExactly("1. Pelican Cut S2", "2. Pelican Cut S10");
    assertThat(labels(data.getRowKeys())).containsExactly("Propeller", "Anchor drag");
    double first = data.getValue(0, 0).doubleValue() + data.getValue(1, 0).doubleValue();
    assertThat(first).isEqualTo(100);
    assertThat(data.getValue(0, 1).doubleValue()).isEqualTo(14);
  }

  @Test
  void aChartWithNothingToShowSaysSo() {
    List<String> messages =
        Charts.of(survey(0, 0, 0, 1, false)).stream()
            .filter(picture -> !picture.name().equals(RecoveryChart.NAME))
            .filter(picture -> !picture.name().equals(BudgetChart.NAME))
            .filter(picture -> !picture.name().equals(ConnectivityChart.NAME))
            .map(picture -> ((CategoryPlot) picture.chart().getPlot()).getNoDataMessage())
            .toList();
    assertThat(messages)
        .containsExactly(
            "No bed was mapped in this survey.",
            "No gaps: no scar separates two patches.",
            "No channel was given, so there is no segment to rank.",
            "No zone to propose: no scar lies within reach of a channel.");
  }

  @Test
  void binsHoldEveryGapOnceAndTheBoundaryGoesUp() {
    double[] widths = {0, 0.1, 0.2, 0.3, 0.3, 0.7, 1.6};
    GapBins bins = GapBins.of(widths);
    assertThat(bins.binMetres()).isEqualTo(0.1);
    assertThat(bins.counts()[0]).isEqualTo(1);
    assertThat(bins.counts()[1]).isEqualTo(1);
    assertThat(bins.counts()[3]).isEqualTo(2);
    assertThat(bins.counts()[16]).isEqualTo(1);
    assertThat(Arrays.stream(bins.counts()).sum() + bins.beyond()).isEqualTo(widths.length);
  }

  @Test
  void oneEnormousGapDoesNotSqueezeTheOthers() {
    double[] widths = IntStream.range(0, 100).mapToDouble(i -> i / 100.0).toArray();
    widths[99] = 10_000;
    GapBins bins = GapBins.of(widths);
    assertThat(bins.beyond()).isEqualTo(1);
    assertThat(bins.endMetres()).isBetween(0.98, 1.2);
  }

  @Test
  void equalGapsFillOneBin() {
    GapBins bins = GapBins.of(new double[] {0.3, 0.3, 0.3});
    assertThat(bins.beyond()).isZero();
    assertThat(Arrays.stream(bins.counts()).filter(n -> n > 0).toArray()).containsExactly(3);
  }

  private static List<String> labels(List<?> keys) {
    return keys.stream().map(Object::toString).toList();
  }

  private static AssessedSurvey survey(
      int areas, int gaps, int segments, double enormous, boolean longNames) {
    Random random = new Random(7);
    List<AreaMeasure> lines = new ArrayList<>();
    double total = 0;
    for (int i = 0; i < areas; i++) {
      double grass = (20 + 400 * random.nextDouble()) * 1e4 * (i == 2 ? enormous : 1);
      total += grass;
      String name = longNames ? LONG_NAME + " " + i : "Management area " + (i + 1);
      lines.add(severities(InventedSurvey.area("" + i, name, 3, spread(grass)), random));
    }
    if (areas > 0) {
      lines.add(
          severities(
              InventedSurvey.summary(Kind.OUTSIDE_MANAGEMENT_AREAS, 2, spread(3e5)), random));
    }
    List<Gap> cut = new ArrayList<>();
    for (int i = 0; i < gaps; i++) {
      double width = 0.15 + 0.5 * Math.abs(random.nextGaussian());
      cut.add(
          InventedSurvey.gap(
              "G" + i,
              "" + i,
              "P1",
              "P2",
              i == 3 ? width * enormous : width,
              10,
              InventedSurvey.line(0, 0, 1, 1)));
    }
    AreaMeasure whole = InventedSurvey.summary(Kind.WHOLE_SURVEY, areas * 3, spread(total));
    lines.add(
        new AreaMeasure(
            whole.kind(),
            whole.area(),
            whole.bedCount(),
            whole.damage(),
            InventedSurvey.pieces(1, gaps, cut.stream().map(Gap::minimumWidthMetres).toList()),
            whole.byClass(),
            whole.bySeverity()));
    List<RankedSegment> ranked = new ArrayList<>();
    for (int i = 0; i < segments; i++) {
      double metres = 900.0 / (1 + i) * (i == 0 ? enormous : 1);
      Map<String, Double> causes = new TreeMap<>();
      causes.put("propeller", metres * 0.6);
      causes.put("anchor", metres * 0.25);
      causes.put("grounding", metres * 0.1);
      causes.put("unknown", metres * 0.05);
      ranked.add(
          InventedSurvey.segment(
              i + 1,
              "S" + (i * 37 % 211),
              longNames ? LONG_NAME : "Pelican Cut",
              metres,
              1.5,
              causes));
    }
    return InventedSurvey.with(
        withAreas(InventedSurvey.measurement(), lines, cut),
        new ChannelRanking(ranked, List.of(), 0, 0, 0, 0, 0),
        List.of());
  }

  private static Damage spread(double grass) {
    return InventedSurvey.damage(grass, grass * 0.9, 40, 3_000, grass * 0.03, "light");
  }

  private static AreaMeasure severities(AreaMeasure area, Random random) {
    double grass = area.damage().grassSquareMetres();
    double light = 0.2 + 0.3 * random.nextDouble();
    double severe = 0.15 * random.nextDouble();
    return new AreaMeasure(
        area.kind(),
        area.area(),
        area.bedCount(),
        area.damage(),
        area.fragmentation(),
        area.byClass(),
        List.of(
            new SeverityGrass("none", grass * (0.75 - light - severe)),
            new SeverityGrass("light", grass * light),
            new SeverityGrass("moderate", grass * 0.15),
            new SeverityGrass("severe", grass * severe),
            new SeverityGrass("unknown", grass * 0.1)));
  }

  private static Measurement withAreas(Measurement m, List<AreaMeasure> areas, List<Gap> gaps) {
    return new Measurement(
        m.scars(),
        m.scarsInBeds(),
        m.beds(),
        areas,
        m.patches(),
        gaps,
        m.scarredGrass(),
        m.connectivity());
  }
}
