package org.meadowmark.core.write.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** A headless Chromium of the machine. */
final class Browser implements AutoCloseable {
  private static final Logger LOGGER = Logger.getLogger("org.openqa.selenium");

  private final ChromeDriver driver;

  private Browser(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Starts it, or skips the tests with a message where it is not installed. */
  static Browser startOrSkip() {
    Optional<Path> chromium = program("chromium", "chromium-browser", "google-chrome");
    Optional<Path> service = program("chromedriver");
    Assumptions.assumeTrue(
        chromium.isPresent() && service.isPresent(),
        "Chromium or its driver is not installed: the tests of the report in a browser are"
            + " skipped (on Debian: apt-get install chromium chromium-driver)");
    // It wants a library for each version of the browser, which is not needed here.
    LOGGER.setLevel(Level.SEVERE);
    ChromeOptions options = new ChromeOptions();
    options.setBinary(chromium.get().toFile());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-dev-shm-usage",
        "--disable-gpu",
        "--hide-scrollbars",
        "--force-device-scale-factor=1");
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    logs.enable(LogType.PERFORMANCE, Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    return new Browser(
        new ChromeDriver(
            new ChromeDriverService.Builder().usingDriverExecutable(service.get().toFile()).build(),
            options));
  }

  private static Optional<Path> program(String... names) {
    String path = System.getenv().getOrDefault("PATH", "");
    return Stream.of(names)
        .flatMap(name -> Stream.of(path.split(":")).map(folder -> Path.of(folder, name)))
        .filter(Files::isExecutable)
        .findFirst();
  }

  void open(Path page, int width, int height) {
    size(width, height);
    driver.get(page.toUri().toString());
  }

  void size(int width, int height) {
    driver.manage().window().setSize(new Dimension(width, height));
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  /** Colour scheme that the machine prefers, light or dark. */
  void prefer(String scheme) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "features",
            List.of(
                Map.of("name", "prefers-color-scheme", "value", scheme),
                Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
  }

  /** Whether the page may run its scripts. */
  void scripts(boolean allowed) {
    driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", !allowed));
  }

  Object run(String script, Object... arguments) {
    return ((JavascriptExecutor) driver).executeScript(script, arguments);
  }

  String text(String script, Object... arguments) {
    return String.valueOf(run("return " + script, arguments));
  }

  WebElement find(String selector) {
    return driver.findElement(By.cssSelector(selector));
  }

  List<WebElement> findAll(String selector) {
    return driver.findElements(By.cssSelector(selector));
  }

  Actions actions() {
    return new Actions(driver);
  }

  /** Everything that went wrong in the page since the last question. */
  List<String> problems() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
        .map(LogEntry::getMessage)
        // Advice on what the tests themselves do.
        .filter(message -> !message.contains("willReadFrequently"))
        .toList();
  }

  /** Addresses that the page asked for since the last question, data inside it left out. */
  List<String> requests() {
    return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
        .map(LogEntry::getMessage)
        .filter(message -> message.contains("\"Network.requestWillBeSent\""))
        .map(message -> message.replaceAll("(?s).*\"documentURL\".*?\"url\":\"([^\"]*)\".*", "$1"))
        .filter(address -> !address.startsWith("data:"))
        .toList();
  }

  byte[] screen() {
    return driver.getScreenshotAs(OutputType.BYTES);
  }

  /** Picture of the page from the top, or from an element, to a height. */
  byte[] picture(String selector, int height) {
    Object top =
        run(
            "return Math.max(0, Math.round(document.querySelector(arguments[0])"
                + ".getBoundingClientRect().top + window.scrollY))",
            selector);
    Object width = run("return window.innerWidth");
    Map<String, Object> result =
        driver.executeCdpCommand(
            "Page.captureScreenshot",
            Map.of(
                "format",
                "png",
                "captureBeyondViewport",
                true,
                "clip",
                Map.of("x", 0, "y", top, "width", width, "height", height, "scale", 1)));
    return Base64.getDecoder().decode((String) result.get("data"));
  }

  /** The page on A4 paper. */
  byte[] paper() {
    Map<String, Object> result =
        driver.executeCdpCommand(
            "Page.printToPDF",
            Map.of(
                "preferCSSPageSize", true,
                "paperWidth", 8.27,
                "paperHeight", 11.69));
    return Base64.getDecoder().decode((String) result.get("data"));
  }

  /** Writes bytes where a person can look at them, if {@code meadowmark.look} names a folder. */
  static void look(String name, byte[] content) {
    String folder = System.getProperty("meadowmark.look");
    if (folder != null) {
      try {
        Files.createDirectories(Path.of(folder));
        Files.write(Path.of(folder, name), content);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  void assertNothingWrong() {
    assertThat(problems()).as("messages of the console").isEmpty();
  }

  @Override
  public void close() {
    driver.quit();
  }
}
