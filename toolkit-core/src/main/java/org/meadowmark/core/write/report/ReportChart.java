package org.meadowmark.core.write.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Objects;
import org.meadowmark.core.write.chart.Picture;

/**
 * A chart that the page carries.
 *
 * @param name file name without its ending
 * @param title title of the chart, which describes it to who cannot see it
 * @param dataUri the picture
 */
public record ReportChart(String name, String title, String dataUri) {

  /**
   * Takes a picture that is already text; {@link #of} makes it from a file.
   *
   * @param name file name without its ending
   * @param title title of the chart, which describes it to who cannot see it
   * @param dataUri the picture as a {@code data:} address (RFC 2397)
   * @throws NullPointerException if anything is null
   */
  public ReportChart {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(dataUri, "dataUri");
  }

  /**
   * {@return a chart from the file that it was written to: lines where there is such a file, else
   * pixels}
   *
   * @param picture the chart, for its name and title
   * @param folder folder with its {@code .svg} or {@code .png}
   * @throws IOException if there is neither
   */
  public static ReportChart of(Picture picture, Path folder) throws IOException {
    Path lines = folder.resolve(picture.name() + ".svg");
    boolean hasLines = Files.exists(lines);
    Path file = hasLines ? lines : folder.resolve(picture.name() + ".png");
    return new ReportChart(
        picture.name(),
        picture.chart().getTitle() == null ? picture.name() : picture.chart().getTitle().getText(),
        "data:image/"
            + (hasLines ? "svg+xml" : "png")
            + ";base64,"
            + Base64.getEncoder().encodeToString(Files.readAllBytes(file)));
  }
}
