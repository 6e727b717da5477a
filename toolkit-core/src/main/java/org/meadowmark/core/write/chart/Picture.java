package org.meadowmark.core.write.chart;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.jfree.chart.JFreeChart;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.model.WriteAdvice;

/**
 * A chart with a name and a size.
 *
 * @param name file name without its ending
 * @param chart the chart
 * @param width width in points of its type; the picture has {@value #DENSITY} pixels a point
 * @param height height likewise
 */
public record Picture(String name, JFreeChart chart, int width, int height) {
  /** Pixels a point. */
  public static final int DENSITY = 2;

  /**
   * Draws the picture.
   *
   * @return the chart in colour without transparency, {@value #DENSITY} times {@code width} by
   *     {@value #DENSITY} times {@code height} pixels
   */
  public BufferedImage image() {
    BufferedImage image =
        new BufferedImage(width * DENSITY, height * DENSITY, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.scale(DENSITY, DENSITY);
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    chart.draw(g, new Rectangle2D.Double(0, 0, width, height));
    g.dispose();
    return image;
  }

  /** {@return the picture as SVG: lines and text, a document of its own} */
  public String svg() {
    return ChartSvg.of(this);
  }

  /**
   * Writes the picture as SVG.
   *
   * @param folder folder that exists
   * @return the file
   * @throws OutputFailedException if it cannot be written
   */
  public Path writeSvg(Path folder) {
    Path file = folder.resolve(name + ".svg");
    try {
      Files.writeString(file, svg(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw failed(file, e);
    }
    return file;
  }

  /**
   * Writes the picture as PNG.
   *
   * @param folder folder that exists
   * @return the file
   * @throws OutputFailedException if it cannot be written
   */
  public Path writePng(Path folder) {
    Path file = folder.resolve(name + ".png");
    try {
      // Written in memory first: on a full disk the image writer would leave the file open.
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      if (!ImageIO.write(image(), "png", bytes)) {
        throw new IllegalStateException("every Java platform writes PNG");
      }
      Files.write(file, bytes.toByteArray());
    } catch (IOException e) {
      throw failed(file, e);
    }
    return file;
  }

  private static OutputFailedException failed(Path file, IOException e) {
    String reason = WriteAdvice.reason(e);
    return new OutputFailedException(
        file + ": cannot be written (" + reason + "); " + WriteAdvice.of(reason), e);
  }
}
