package org.meadowmark.core.write.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.write.InventedSurvey;
import org.meadowmark.core.write.Phrases;
import org.meadowmark.core.write.proposal.GridPlaces;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The report in a real browser. Skipped with a message where there is none. */
class ReportBrowserTest {
  @TempDir static Path folder;

  private static Browser browser;
  private static Path page;

  @BeforeAll
  static void start() {
    browser = Browser.startOrSkip();
    Report.write(folder, HostileSurvey.input());
    page = folder.resolve(Report.FILE_NAME);
  }

  @AfterAll
  static void stop() {
    if (browser != null) {
      browser.close();
    }
  }

  @BeforeEach
  void open() {
    browser.prefer("light");
    browser.open(page, 1400, 900);
  }

  @Test
  void pageLoadsNothingAndSaysNothing() {
    browser.requests();
    open();
    assertThat(browser.requests()).isNotEmpty().containsOnly(page.toUri().toString());
    assertThat(browser.problems()).isEmpty();
  }

  @Test
  void namesStayText() {
    showTable("beds");
    List<String> names =
        browser.findAll("#table tbody td:first-child").stream()
            .map(cell -> cell.getDomProperty("textContent"))
            .toList();
    assertThat(names).startsWith(HostileSurvey.NAMES.toArray(String[]::new));
    browser.run("document.querySelectorAll('#table tbody tr')[1].click()");
    assertThat(browser.find("#details-text h3").getDomProperty("textContent"))
        .isEqualTo("Bed " + HostileSurvey.END);
    assertThat(browser.find("#chart-severity-by-area img").getDomAttribute("alt"))
        .isEqualTo(HostileSurvey.COMMENT);
    assertThat(browser.text("window.hurt")).isEqualTo("null");
    assertThat(browser.findAll("img[src='x']")).isEmpty();
    assertThat(browser.findAll("script")).hasSize(3);
    browser.assertNothingWrong();
  }

  /** A script that got in all the same would not run. */
  @Test
  void policyStopsOtherScripts() {
    browser.run(
        "const s = document.createElement('script'); s.textContent = 'window.hurt = 3';"
            + "document.body.appendChild(s);"
            + "const d = document.createElement('div');"
            + "d.innerHTML = '<button id=bad onclick=\"window.hurt = 4\">x</button>';"
            + "document.body.appendChild(d); document.getElementById('bad').click();");
    assertThat(browser.text("window.hurt")).isEqualTo("null");
    assertThat(browser.problems()).isNotEmpty().allMatch(p -> p.contains("Content Security"));
  }

  @Test
  void layersSwitchOnAndOff() {
    for (WebElement box : browser.findAll("#layers input")) {
      String before = drawn();
      boolean was = box.isSelected();
      box.click();
      assertThat(box.isSelected()).isNotEqualTo(was);
      assertThat(drawn()).as(box.getDomAttribute("id")).isNotEqualTo(before);
      box.sendKeys(Keys.SPACE);
      assertThat(box.isSelected()).isEqualTo(was);
      assertThat(drawn()).as("%s, back", box.getDomAttribute("id")).isEqualTo(before);
    }
  }

  /** Sum over what the canvases of the map show. */
  private static String drawn() {
    return browser.text(
        "Array.from(document.querySelectorAll('#map canvas')).map(c => { const d = c"
            + ".getContext('2d').getImageData(0, 0, c.width, c.height).data; let h = 7; for (let i"
            + " = 0; i < d.length; i++) { h = (31 * h + d[i]) | 0; } return h; }).join(' ')");
  }

  @Test
  void clickOnTheMapShowsDetailsAndMarksTheRow() {
    clickOn("beds", HostileSurvey.SCRIPT);
    assertThat(browser.find("#details-text h3").getText()).isEqualTo("Bed " + HostileSurvey.SCRIPT);
    assertThat(browser.find("#tab-beds").getDomAttribute("aria-selected")).isEqualTo("true");
    WebElement row = browser.find("#table tr.chosen");
    assertThat(row.findElements(By.tagName("td")).get(0).getText()).isEqualTo(HostileSurvey.SCRIPT);
    assertThat(row.getDomAttribute("aria-current")).isEqualTo("true");

    clickOn("scars", "B7");
    assertThat(browser.find("#details-text h3").getText()).isEqualTo("Scar B7");
    assertThat(browser.find("#details-text").getText()).contains("Unknown cause");
    browser.assertNothingWrong();
  }

  @Test
  void pointerShowsWhatIsThere() {
    moveTo("beds", HostileSurvey.COMMENT);
    WebElement hover = browser.find("#hover");
    assertThat(hover.isDisplayed()).isTrue();
    assertThat(hover.getText()).startsWith("Bed " + HostileSurvey.COMMENT).contains("Severe");
    List<?> place = (List<?>) browser.run("return reportMap.place('beds', arguments[0])", "11");
    assertThat(place).hasSize(2);
  }

  @Test
  void clickOnARowBringsTheMapThere() {
    browser.run("reportMap.map.setView([900, 900], 1, {animate: false})");
    assertThat(isInView("beds", "11")).isFalse();
    showTable("beds");
    browser.findAll("#table tbody tr").stream()
        .filter(row -> row.getText().startsWith("11 ") || row.getText().startsWith("11\n"))
        .findFirst()
        .orElseThrow()
        .click();
    assertThat(isInView("beds", "11")).isTrue();
    assertThat(browser.find("#details-text h3").getText()).isEqualTo("Bed 11");
    assertThat(browser.findAll("#table tr.chosen")).hasSize(1);
  }

  private static boolean isInView(String layer, String id) {
    return (Boolean)
        browser.run(
            "const p = reportMap.place(arguments[0], arguments[1]); const s ="
                + " reportMap.map.getSize(); return p[0] >= 0 && p[1] >= 0 && p[0] < s.x && p[1] <"
                + " s.y",
            layer,
            id);
  }

  /** Every figure of every table is the one of the result, and the details repeat it. */
  @Test
  void tableMapAndResultAgree() {
    Phrases text = Phrases.english("org.meadowmark.core.write.report.report");
    List<MapLayer> layers =
        ReportLayers.of(HostileSurvey.assessed(), text, ReportLayers.MOST_FEATURES);
    int compared = 0;
    for (MapLayer layer : layers) {
      if (layer.isBackground() || layer.geometries().isEmpty()) {
        continue;
      }
      showTable(layer.key());
      List<?> rows =
          (List<?>)
              browser.run(
                  "return Array.from(document.querySelectorAll('#table tbody tr')).map(r => {"
                      + " r.click(); return [Array.from(r.cells).map(c => c.textContent),"
                      + " Array.from(document.querySelectorAll('#details-text dd')).map(d =>"
                      + " d.textContent)]; })");
      assertThat(rows).hasSameSizeAs(layer.geometries());
      for (int row = 0; row < rows.size(); row++) {
        List<?> both = (List<?>) rows.get(row);
        List<?> cells = (List<?>) both.get(0);
        String details = both.get(1).toString();
        for (int k = 0; k < layer.columns().size(); k++) {
          String right = layer.columns().get(k).shown(row);
          assertThat(cells.get(k)).as(layer.key() + " " + k).isEqualTo(right);
          if (k > 0 && layer.columns().get(k).values().get(row) != null) {
            assertThat(details).contains(right);
          }
          compared++;
        }
      }
    }
    assertThat(compared).isGreaterThan(150);
  }

  @Test
  void headingsSort() {
    showTable("beds");
    browser.findAll("#table th button").get(3).click();
    assertThat(browser.findAll("#table th").get(3).getDomAttribute("aria-sort"))
        .isEqualTo("descending");
    assertThat(column(3)).startsWith("1.00", "0.36").endsWith("0.16");
    browser.findAll("#table th button").get(3).click();
    assertThat(column(3)).startsWith("0.16").endsWith("1.00");
    browser.findAll("#table th button").get(7).click();
    assertThat(column(7)).as("what is not known comes last").endsWith("–");
  }

  private static List<String> column(int k) {
    return browser.findAll("#table tbody tr td:nth-child(" + (k + 1) + ")").stream()
        .map(WebElement::getText)
        .toList();
  }

  @Test
  void keysMoveTheMap() {
    WebElement map = browser.find("#map");
    int steps = 0;
    browser.run("document.getElementById('whole').focus()");
    while (!"map".equals(browser.text("document.activeElement.id")) && steps++ < 3) {
      browser.actions().sendKeys(Keys.TAB).perform();
    }
    assertThat(browser.text("document.activeElement.id")).isEqualTo("map");
    assertThat(map.getCssValue("outline-style")).as("focus can be seen").isEqualTo("solid");

    double east = number("reportMap.map.getCenter().lng");
    browser.actions().sendKeys(Keys.ARROW_RIGHT).perform();
    assertThat(number("reportMap.map.getCenter().lng")).isGreaterThan(east);
    double zoom = number("reportMap.map.getZoom()");
    browser.actions().sendKeys("+").perform();
    assertThat(number("reportMap.map.getZoom()")).isGreaterThan(zoom);

    browser.run("reportMap.map.setView([230, 30], 2, {animate: false})");
    browser.actions().sendKeys(Keys.ENTER).perform();
    assertThat(browser.find("#details-text h3").getText()).isEqualTo("Bed " + HostileSurvey.SCRIPT);
    browser.actions().sendKeys(Keys.ESCAPE).perform();
    assertThat(browser.findAll("#details-text h3")).isEmpty();
    browser.assertNothingWrong();
  }

  private static double number(String expression) {
    return ((Number) browser.run("return " + expression)).doubleValue();
  }

  @Test
  void rowsAndHeadingsAreReachedByTab() {
    showTable("zones");
    browser.run("document.getElementById('tab-zones').focus()");
    browser.actions().sendKeys(Keys.TAB).perform();
    assertThat(browser.text("document.activeElement.closest('th') !== null")).isEqualTo("true");
    for (int i = 0; i < 12; i++) {
      if (browser.text("document.activeElement.className").equals("go")) {
        break;
      }
      browser.actions().sendKeys(Keys.TAB).perform();
    }
    browser.actions().sendKeys(Keys.ENTER).perform();
    assertThat(browser.find("#details-text h3").getText()).isEqualTo("Zone Z1");
  }

  @Test
  void nightFollowsTheMachineAndTheSwitch() {
    assertThat(paint()).isEqualTo(ReportPalette.DAY.colour("water"));
    browser.prefer("dark");
    open("dark");
    assertThat(paint()).isEqualTo(ReportPalette.NIGHT.colour("water"));
    assertThat(background()).isEqualTo(rgb(ReportPalette.NIGHT.colour("page")));
    browser.find("#theme").click();
    assertThat(paint()).isEqualTo(ReportPalette.DAY.colour("water"));
    assertThat(background()).isEqualTo(rgb(ReportPalette.DAY.colour("page")));
    browser.find("#theme").click();
    assertThat(background()).isEqualTo(rgb(ReportPalette.NIGHT.colour("page")));
  }

  private static void open(String scheme) {
    browser.prefer(scheme);
    browser.open(page, 1400, 900);
  }

  /** Colour of the first pixel of the chart, which is water. */
  private static String paint() {
    return browser.text(
        "(() => { const d = document.querySelector('.leaflet-overlay-pane canvas').getContext('2d')"
            + ".getImageData(2, 2, 1, 1).data; return '#' + [d[0], d[1], d[2]].map(v =>"
            + " v.toString(16).padStart(2, '0')).join('').toUpperCase(); })()");
  }

  private static String background() {
    return browser.text("getComputedStyle(document.body).backgroundColor");
  }

  private static String rgb(String hex) {
    Color colour = Color.decode(hex);
    return "rgb(" + colour.getRed() + ", " + colour.getGreen() + ", " + colour.getBlue() + ")";
  }

  @Test
  void paperHasAMapTablesAndDayColours() throws IOException {
    open("dark");
    byte[] paper = browser.paper();
    Browser.look("report.pdf", paper);
    try (PDDocument pdf = Loader.loadPDF(paper)) {
      assertThat(pdf.getNumberOfPages()).isBetween(3, 8);
      String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
      assertThat(text)
          .contains("Gullwing Sound, spring", "For the hearing", "The whole survey with the layers")
          .contains(
              "All columns: tables/beds.csv",
              "<script>window.hurt",
              "Cautions",
              "Planting and diving")
          .doesNotContain("Skip to the map", "Drag, or use", "Night colours", "Day colours");
    }
    assertThat(
            browser.text(
                "(() => { const c = document.getElementById('paper-map'); const d ="
                    + " c.getContext('2d').getImageData(0, 0, c.width, c.height).data; const seen ="
                    + " new Set(); for (let i = 0; i < d.length; i += 4) { seen.add((d[i] << 16) |"
                    + " (d[i + 1] << 8) | d[i + 2]); } return ["
                    + hex(ReportPalette.DAY.colour("water"))
                    + ", "
                    + hex(ReportPalette.DAY.colour("bed-3"))
                    + ", "
                    + hex(ReportPalette.DAY.colour("zone"))
                    + "].map(v => seen.has(v)).join(); })()"))
        .isEqualTo("true,true,true");
    assertThat(background()).isEqualTo(rgb(ReportPalette.NIGHT.colour("page")));
  }

  private static String hex(String colour) {
    return "0x" + colour.substring(1);
  }

  /** Grid length = ground length times the factor of the grid. */
  @Test
  void scaleBarShowsGroundMetres() {
    Map<?, ?> bar =
        (Map<?, ?>)
            browser.run("return Object.assign({}, arguments[0].dataset)", browser.find("#map"));
    double metres = Double.parseDouble((String) bar.get("barMetres"));
    double pixels = Double.parseDouble((String) bar.get("barPixels"));
    double gridMetres =
        number(
            "reportMap.map.containerPointToLatLng([100 + "
                + pixels
                + ", 100]).lng - reportMap.map.containerPointToLatLng([100, 100]).lng");
    assertThat(gridMetres).isCloseTo(metres * HostileSurvey.FACTOR, within(1e-6 * gridMetres));
  }

  /** Degrees that the page works out are those of the projection. */
  @Test
  void coordinatesAreThoseOfTheProjection() {
    GridPlaces places = GridPlaces.of(InventedSurvey.UTM_17N_WKT).orElseThrow();
    for (double[] at : new double[][] {{0, 0}, {340, 10}, {700, 260}, {-150, 900}}) {
      String shown =
          browser.text(
              "reportMap.text(arguments[0] - reportMap.origin[0], arguments[1] - reportMap.origin[1])",
              at[0],
              at[1]);
      GridPlaces.Degrees right = places.at(at[0], at[1]);
      String[] parts = shown.replace('\u00a0', ' ').split("[°′]");
      assertThat(degrees(parts[0], parts[1]))
          .isCloseTo(right.latitude(), within(0.0005 / 60 + 1e-6));
      assertThat(degrees(parts[2].replaceAll("[NS]", ""), parts[3]))
          .isCloseTo(-right.longitude(), within(0.0005 / 60 + 1e-6));
    }
  }

  private static double degrees(String degrees, String minutes) {
    return Double.parseDouble(degrees.strip()) + Double.parseDouble(minutes.strip()) / 60;
  }

  @Test
  void emptySurveyOnAnUnknownGridOpens(@TempDir Path other) {
    Report.write(other, new ReportInput(HostileSurvey.empty(), List.of(), "1.2.3"));
    browser.open(other.resolve(Report.FILE_NAME), 1400, 900);
    assertThat(browser.find(".answer").getText()).startsWith("No bed was mapped");
    assertThat(browser.text("reportMap.text(0, 0)")).matches("E.\\d+  N.\\d+");
    assertThat(browser.findAll("#layers input")).hasSize(1);
    assertThat(browser.paper()).isNotEmpty();
    browser.assertNothingWrong();
  }

  @Test
  void withoutScriptsTheTablesAreThere() {
    browser.scripts(false);
    try {
      open();
      assertThat(browser.find(".paper caption").isDisplayed()).isTrue();
      assertThat(browser.find("noscript p").isDisplayed()).isTrue();
      assertThat(browser.find("#theme").isDisplayed()).isFalse();
      assertThat(browser.find("#map").isDisplayed()).isFalse();
    } finally {
      browser.scripts(true);
    }
  }

  @Test
  void narrowPageDoesNotScrollSideways() {
    for (int width : new int[] {360, 800, 1400}) {
      browser.open(page, width, 800);
      assertThat(number("document.documentElement.scrollWidth"))
          .as("width " + width)
          .isLessThanOrEqualTo(width);
    }
  }

  private static void showTable(String key) {
    browser.run("document.getElementById('tab-' + arguments[0]).click()", key);
  }

  private static void moveTo(String layer, String id) {
    browser.run("document.getElementById('map').scrollIntoView({block: 'center'})");
    List<?> place =
        (List<?>) browser.run("return reportMap.place(arguments[0], arguments[1])", layer, id);
    WebElement map = browser.find("#map");
    int x = ((Number) place.get(0)).intValue() - map.getSize().getWidth() / 2;
    int y = ((Number) place.get(1)).intValue() - map.getSize().getHeight() / 2;
    browser.actions().moveToElement(map, x, y).perform();
    browser.run(
        "return new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
  }

  private static void clickOn(String layer, String id) {
    moveTo(layer, id);
    browser.actions().click().perform();
  }
}
