package org.meadowmark.core.project;

import java.awt.image.Raster;
import java.io.File;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import javax.media.jai.JAI;
import org.geotools.api.parameter.GeneralParameterValue;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.EngineeringCRS;
import org.geotools.api.referencing.datum.PixelInCell;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.NoninvertibleTransformException;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.coverage.grid.GridCoverage2D;
import org.geotools.coverage.grid.io.AbstractGridCoverage2DReader;
import org.geotools.gce.arcgrid.ArcGridReader;
import org.geotools.gce.geotiff.GeoTiffReader;
import org.geotools.referencing.CRS;
import org.geotools.referencing.operation.transform.ConcatenatedTransform;
import org.meadowmark.core.check.FindingLog;
import org.meadowmark.core.model.BoundedFile;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.SurveyInputException;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.LengthUnit;

/**
 * Depth from an ESRI ASCII grid ({@code .asc}) or a GeoTIFF ({@code .tif}, {@code .tiff}): the
 * value of the cell that holds the point, in the grid's own reference system. Cells without data,
 * and places outside the grid, have no depth.
 *
 * <p>The reference system is the one the survey states, else the text of a {@code .prj} file beside
 * the grid, else the one inside a GeoTIFF. The first band counts. The whole grid is held in memory.
 * Safe for use by several threads.
 */
public final class DepthGrid implements DepthField {
  private static final String ASCII_GRID = ".asc";
  private static final int LONGEST_PRJ_BYTES = 100_000;

  /**
   * Loggers of the grid readers, kept so that they are not collected. They would print on the
   * terminal, with a stack trace, what they also throw.
   */
  private static final List<Logger> READERS_LOGS =
      Stream.of(
              // Named so by the reader: by the text of its class, not by its name.
              "class it.geosolutions.imageio.plugins.arcgrid.AsciiGridsImageReader",
              "it.geosolutions.imageioimpl.plugins.tiff",
              "org.geotools.coverage.grid.io",
              // Of no library: what reads a GeoTIFF prints there where it words its own failure.
              Logger.GLOBAL_LOGGER_NAME,
              "org.geotools.gce.arcgrid",
              "org.geotools.gce.geotiff")
          .map(Logger::getLogger)
          .toList();

  static {
    READERS_LOGS.forEach(logger -> logger.setLevel(Level.OFF));
    // Unless told otherwise, the library prints what is wrong with a picture.
    JAI.getDefaultInstance()
        .setImagingListener(
            (message, thrown, where, isRetryable) -> {
              throw new IllegalStateException(message, thrown);
            });
  }

  private final Raster cells;
  private final double[] noData;
  private final MathTransform toCell;
  private final LengthUnit unit;

  private DepthGrid(Raster cells, double[] noData, MathTransform toCell, LengthUnit unit) {
    this.cells = cells;
    this.noData = noData;
    this.toCell = toCell;
    this.unit = unit;
  }

  /**
   * {@return whether a depth layer is a grid by the ending of its file; else it is a layer of
   * points}
   *
   * @param source a layer of depth
   */
  public static boolean isGrid(LayerSource source) {
    String name = source.file().toString().toLowerCase(Locale.ROOT);
    return name.endsWith(ASCII_GRID) || name.endsWith(".tif") || name.endsWith(".tiff");
  }

  /**
   * Reads a grid of depths.
   *
   * @param source the layer; its width unit is the unit of depth, positive downwards
   * @param analysis the grid that depths will be asked for on
   * @param catalog reference systems
   * @param log takes a warning where most values are negative
   * @return depths that can be asked for by places on the analysis grid
   * @throws SurveyInputException if the file cannot be read or its reference system is not known
   */
  public static DepthGrid read(
      LayerSource source, AnalysisGrid analysis, CrsCatalog catalog, FindingLog log) {
    FeatureRef ref = FeatureRef.layer(source.fileLabel(), "");
    File file = source.file().toFile();
    if (!Files.isReadable(source.file()) || !Files.isRegularFile(source.file())) {
      throw unreadable(ref, "the file cannot be opened", null);
    }
    try {
      boolean ascii = file.getName().toLowerCase(Locale.ROOT).endsWith(ASCII_GRID);
      refuseIfTooLarge(source, ascii, ref);
      AbstractGridCoverage2DReader reader =
          ascii ? new ArcGridReader(file) : new GeoTiffReader(file);
      try {
        GridCoverage2D coverage = reader.read((GeneralParameterValue[]) null);
        ResolvedCrs crs = referenceSystem(source, coverage, catalog, ref);
        DepthGrid grid =
            new DepthGrid(
                coverage.getRenderedImage().getData(),
                noDataOf(coverage),
                toCell(coverage, crs, analysis),
                source.widthUnit());
        coverage.dispose(true);
        grid.warnIfHeights(ref, log);
        return grid;
      } finally {
        reader.dispose();
      }
    } catch (SurveyInputException e) {
      throw e;
    } catch (GridFileException e) {
      throw unreadable(ref, "the depth grid cannot be read: " + e.getMessage(), e);
    } catch (IOException
        | FactoryException
        | NoninvertibleTransformException
        | RuntimeException e) {
      throw unreadable(ref, "the depth grid cannot be read", e);
    }
  }

  /** What would fill memory is refused in words, whether the file is false or only large. */
  private static void refuseIfTooLarge(LayerSource source, boolean ascii, FeatureRef ref)
      throws IOException {
    double bytes =
        ascii
            ? (double) Double.BYTES * AsciiGridSize.cells(source.file())
            : TiffStructure.decodedBytes(source.file());
    if (bytes > Runtime.getRuntime().maxMemory() / 2.0) {
      throw new SurveyInputException(
          finding(
              ref,
              FindingCode.UNREADABLE_FILE,
              Finding.Level.ERROR,
              Treatment.REFUSED,
              "the depth grid takes %.0f MB, more than half of the memory allowed"
                  .formatted(bytes / 1e6),
              "cut it to the beds, make its cells larger, or allow more memory"));
    }
  }

  @Override
  public OptionalDouble depthMetres(double x, double y) {
    double[] cell = {x, y};
    try {
      toCell.transform(cell, 0, cell, 0, 1);
    } catch (TransformException e) {
      return OptionalDouble.empty();
    }
    int column = (int) Math.floor(cell[0]);
    int row = (int) Math.floor(cell[1]);
    boolean inside =
        column >= cells.getMinX()
            && row >= cells.getMinY()
            && column < cells.getMinX() + cells.getWidth()
            && row < cells.getMinY() + cells.getHeight();
    if (!inside) {
      return OptionalDouble.empty();
    }
    double value = cells.getSampleDouble(column, row, 0);
    return isData(value) ? OptionalDouble.of(unit.toMetres(value)) : OptionalDouble.empty();
  }

  private boolean isData(double value) {
    if (!Double.isFinite(value)) {
      return false;
    }
    return Arrays.stream(noData).noneMatch(none -> none == value || (float) none == value);
  }

  private void warnIfHeights(FeatureRef ref, FindingLog log) {
    long negative = 0;
    long known = 0;
    for (int row = 0; row < cells.getHeight(); row++) {
      for (int column = 0; column < cells.getWidth(); column++) {
        double value = cells.getSampleDouble(cells.getMinX() + column, cells.getMinY() + row, 0);
        if (isData(value)) {
          known++;
          negative += value < 0 ? 1 : 0;
        }
      }
    }
    if (known == 0) {
      log.add(
          finding(
              ref,
              FindingCode.NO_FEATURES,
              Finding.Level.WARNING,
              Treatment.KEPT,
              "no cell of the depth grid has a value",
              "no depth is known from it"));
    } else if (2 * negative > known) {
      log.add(
          finding(
              ref,
              FindingCode.VALUE_UNREADABLE,
              Finding.Level.WARNING,
              Treatment.KEPT,
              "most values are negative: the grid seems to hold heights",
              "used as it is; depth must be positive downwards, so turn the sign in the file"));
    }
  }

  private static double[] noDataOf(GridCoverage2D coverage) {
    double[] values = coverage.getSampleDimension(0).getNoDataValues();
    return values == null ? new double[0] : values;
  }

  private static ResolvedCrs referenceSystem(
      LayerSource source, GridCoverage2D coverage, CrsCatalog catalog, FeatureRef ref)
      throws IOException, FactoryException {
    Optional<CrsText> text = source.crs().map(CrsText::ofCode);
    if (text.isEmpty()) {
      text = prjBeside(source.file());
    }
    if (text.isPresent()) {
      return catalog.resolve(text.get().withAxisOrder(source.axisOrder()), LayerRole.DEPTH, ref);
    }
    CoordinateReferenceSystem inside = coverage.getCoordinateReferenceSystem2D();
    if (inside == null || inside instanceof EngineeringCRS) {
      throw new SurveyInputException(
          finding(
              ref,
              FindingCode.CRS_MISSING,
              Finding.Level.ERROR,
              Treatment.REFUSED,
              "the depth grid does not say what coordinate reference system it is in",
              "state it with crs = \"EPSG:n\" for the layer in the survey file or --crs "
                  + LayerRole.DEPTH.key()
                  + "=EPSG:n"));
    }
    String identifier = CRS.lookupIdentifier(inside, false);
    return identifier == null
        ? new ResolvedCrs(inside, false, inside.getName().getCode())
        : catalog.resolve(CrsText.ofCode(identifier), LayerRole.DEPTH, ref);
  }

  private static Optional<CrsText> prjBeside(Path file) throws IOException {
    String name = file.getFileName().toString();
    String base = name.substring(0, name.lastIndexOf('.'));
    for (String ending : new String[] {".prj", ".PRJ"}) {
      Path prj = file.resolveSibling(base + ending);
      if (Files.exists(prj)) {
        return Optional.of(CrsText.ofWkt(prjText(prj)));
      }
    }
    return Optional.empty();
  }

  private static String prjText(Path prj) throws IOException {
    try {
      return BoundedFile.text(prj, LONGEST_PRJ_BYTES).strip();
    } catch (BoundedFile.TooLongException e) {
      throw new GridFileException("its .prj file is " + e.getMessage());
    } catch (CharacterCodingException e) {
      throw new GridFileException("its .prj file is not UTF-8");
    }
  }

  private static SurveyInputException unreadable(FeatureRef ref, String problem, Throwable cause) {
    return new SurveyInputException(
        finding(
            ref,
            FindingCode.UNREADABLE_FILE,
            Finding.Level.ERROR,
            Treatment.REFUSED,
            problem,
            "give an ESRI ASCII grid or a GeoTIFF"),
        cause);
  }

  private static Finding finding(
      FeatureRef ref,
      FindingCode code,
      Finding.Level level,
      Treatment treatment,
      String problem,
      String action) {
    return new Finding(code, level, treatment, LayerRole.DEPTH, ref, problem, action);
  }

  private static MathTransform toCell(
      GridCoverage2D coverage, ResolvedCrs crs, AnalysisGrid analysis)
      throws FactoryException, NoninvertibleTransformException {
    MathTransform toGrid = CRS.findMathTransform(analysis.crs(), crs.crs(), true);
    MathTransform fromCell = coverage.getGridGeometry().getGridToCRS(PixelInCell.CELL_CORNER);
    return ConcatenatedTransform.create(toGrid, fromCell.inverse());
  }
}
