package org.meadowmark.core.write.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.openqa.selenium.WebElement;

/**
 * Measures how smoothly the map of a report moves, on request: {@code -Dmeadowmark.report=FILE}
 * names the report, {@code -Dmeadowmark.frames=FILE} where the figures go.
 */
@EnabledIfSystemProperty(named = "meadowmark.frames", matches = ".+")
class ReportFramesTest {
  private static final int STEPS = 40;

  @Test
  void measure() throws IOException {
    Path page = Path.of(System.getProperty("meadowmark.report")).toAbsolutePath();
    StringBuilder lines = new StringBuilder();
    lines.append(String.format(Locale.ROOT, "file %.1f MB%n", Files.size(page) / 1e6));
    try (Browser browser = Browser.startOrSkip()) {
      browser.prefer("light");
      browser.open(page, 1400, 900);
      lines.append("load to interactive ").append(loadMillis(browser)).append(" ms\n");
      browser.run(
          "document.querySelectorAll('#layers input').forEach(b => { if (!b.checked) b.click(); });");
      for (double zoom : new double[] {0, 2, 4}) {
        browser.run("document.getElementById('whole').click()");
        browser.run("reportMap.map.setZoom(reportMap.map.getZoom() + arguments[0])", zoom);
        browser.run("document.getElementById('map').scrollIntoView({block: 'center'})");
        lines.append(String.format(Locale.ROOT, "zoomed in by %.0f: ", zoom));
        lines.append("whole redraw ").append(redrawMillis(browser)).append(" ms; ");
        lines.append(pan(browser)).append('\n');
      }
    }
    Files.writeString(
        Path.of(System.getProperty("meadowmark.frames")), lines, StandardCharsets.UTF_8);
    assertThat(lines).isNotEmpty();
  }

  private static String loadMillis(Browser browser) {
    return browser.text(
        "Math.round(performance.getEntriesByType('navigation')[0].domInteractive) + ' to '"
            + " + Math.round(performance.getEntriesByType('navigation')[0].loadEventEnd)");
  }

  private static String redrawMillis(Browser browser) {
    return browser.text(
        "(() => { const t = performance.now(); for (let i = 0; i < 5; i++) {"
            + " reportMap.map.fire('viewreset'); document.querySelector('.leaflet-overlay-pane"
            + " canvas').getContext('2d').getImageData(0, 0, 1, 1); } return"
            + " Math.round((performance.now() - t) / 5); })()");
  }

  /** Drags the map to and fro and looks at the time between frames. */
  private static String pan(Browser browser) {
    browser.run(
        "window.frames_ = []; let last = performance.now(); window.going_ = true; (function next() {"
            + " requestAnimationFrame(t => { const now = performance.now(); window.frames_.push(now"
            + " - last); last = now; if (window.going_) next(); }); })();");
    WebElement map = browser.find("#map");
    var drag = browser.actions().moveToElement(map, 0, 0).clickAndHold();
    for (int i = 0; i < STEPS; i++) {
      drag = drag.moveByOffset(i / 10 % 2 == 0 ? 14 : -14, i / 10 % 2 == 0 ? 6 : -6);
    }
    drag.release().perform();
    browser.run("window.going_ = false");
    double[] frames =
        ((List<?>) browser.run("return window.frames_.slice(1)"))
            .stream().mapToDouble(value -> ((Number) value).doubleValue()).sorted().toArray();
    return String.format(
        Locale.ROOT,
        "%d frames of a pan: median %.0f ms, 95 %% within %.0f ms, longest %.0f ms",
        frames.length,
        frames[frames.length / 2],
        frames[(int) (0.95 * (frames.length - 1))],
        Arrays.stream(frames).max().orElse(0));
  }
}
