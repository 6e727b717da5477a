package org.meadowmark.core.write.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.openqa.selenium.Keys;

/**
 * Takes the pictures of a report for the documents, on request: {@code -Dmeadowmark.report=FILE}
 * names the report, {@code -Dmeadowmark.pictures=FOLDER} where the pictures go.
 */
@EnabledIfSystemProperty(named = "meadowmark.report", matches = ".+")
class ReportPicturesTest {
  private static final int WIDE = 1400;
  private static final int NARROW = 420;
  private static final int PAGE_DPI = 80;
  private static final int PAGE_GAP = 10;
  private static final int PAGES_ACROSS = 3;

  private static Browser browser;
  private static Path page;
  private static Path folder;

  @BeforeAll
  static void start() throws IOException {
    page = Path.of(System.getProperty("meadowmark.report")).toAbsolutePath();
    folder = Path.of(System.getProperty("meadowmark.pictures")).toAbsolutePath();
    Files.createDirectories(folder);
    browser = Browser.startOrSkip();
  }

  @AfterAll
  static void stop() {
    if (browser != null) {
      browser.close();
    }
  }

  private static void save(String name, byte[] picture) throws IOException {
    Files.write(folder.resolve("report-" + name + ".png"), picture);
  }

  @Test
  void summary() throws IOException {
    browser.prefer("light");
    browser.open(page, WIDE, 900);
    save("summary", browser.picture("body", 1_640));
    browser.assertNothingWrong();
  }

  @Test
  void mapWithDetails() throws IOException {
    browser.prefer("light");
    browser.open(page, WIDE, 900);
    closeUp();
    save("map", browser.picture("#map-part", 860));
  }

  @Test
  void mapAtNight() throws IOException {
    browser.prefer("dark");
    browser.open(page, WIDE, 900);
    closeUp();
    save("map-night", browser.picture("#map-part", 860));
  }

  /** The first row of the tables of segments, zones or beds, with gaps and patches on. */
  private static void closeUp() {
    browser.run("document.querySelector('#tab-segments, #tab-beds').click()");
    browser.run("document.querySelector('#table tbody tr').click()");
    browser.run("document.querySelectorAll('#layer-gaps, #layer-patches').forEach(b => b.click())");
    browser.find("#map").sendKeys(Keys.ADD);
  }

  @Test
  void narrow() throws IOException {
    browser.prefer("light");
    browser.open(page, NARROW, 900);
    save("narrow", browser.picture("body", 2_600));
  }

  @Test
  void rest() throws IOException {
    browser.prefer("light");
    browser.open(page, WIDE, 900);
    save("rest", browser.picture("#tables", 4_200));
    browser.prefer("dark");
    browser.open(page, WIDE, 900);
    save("rest-night", browser.picture("body", 2_200));
  }

  @Test
  void paper() throws IOException {
    browser.prefer("dark");
    browser.open(page, WIDE, 900);
    byte[] paper = browser.paper();
    Files.write(folder.resolve("report.pdf"), paper);
    try (PDDocument pdf = Loader.loadPDF(paper)) {
      assertThat(pdf.getNumberOfPages()).isPositive();
      ImageIO.write(sheet(pdf), "png", folder.resolve("report-paper.png").toFile());
    }
  }

  /** All pages side by side. */
  private static BufferedImage sheet(PDDocument pdf) throws IOException {
    PDFRenderer renderer = new PDFRenderer(pdf);
    List<BufferedImage> pages = new ArrayList<>();
    for (int i = 0; i < pdf.getNumberOfPages(); i++) {
      pages.add(renderer.renderImageWithDPI(i, PAGE_DPI));
    }
    int width = pages.get(0).getWidth() + PAGE_GAP;
    int height = pages.get(0).getHeight() + PAGE_GAP;
    int rows = (pages.size() + PAGES_ACROSS - 1) / PAGES_ACROSS;
    BufferedImage sheet =
        new BufferedImage(width * PAGES_ACROSS, height * rows, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = sheet.createGraphics();
    g.setColor(Color.GRAY);
    g.fillRect(0, 0, sheet.getWidth(), sheet.getHeight());
    for (int i = 0; i < pages.size(); i++) {
      g.drawImage(pages.get(i), i % PAGES_ACROSS * width, i / PAGES_ACROSS * height, null);
    }
    g.dispose();
    return sheet;
  }
}
