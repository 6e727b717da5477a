package org.meadowmark.samples;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.write.GeoJsonTableWriter;
import org.meadowmark.core.write.GeoPackageWriter;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.folder.OutputFolder;

/**
 * Writes survey folders: a {@code survey.toml} and the layers that it names.
 *
 * <p>A folder is written beside its place under another name and moved when it is complete; a
 * failed write leaves nothing behind. The same input gives the same files.
 */
public final class SurveyFolderWriter {
  /** Name of the file that describes a survey. */
  public static final String SURVEY_FILE = "survey.toml";

  private static final String NO_DATA = "-9999";

  private SurveyFolderWriter() {}

  /**
   * A file of existing beds for a survey file to name.
   *
   * @param file path, absolute or relative to the survey folder, with forward slashes
   * @param layer layer in the file, where it has several
   * @param crs reference system, where the file does not say
   * @param textureAttribute attribute with the texture, where there is one
   */
  public record BedFile(
      String file,
      Optional<String> layer,
      Optional<String> crs,
      Optional<String> textureAttribute) {}

  /**
   * Writes one survey of an invented estuary, in formats and reference systems as mixed as in real
   * work. The first survey has its own word for propeller scars and a few mistakes; later ones have
   * widths in centimetres and notes on a few scars and beds.
   *
   * @param folder folder to create
   * @param estuary the place
   * @param season 0 for the first survey
   * @throws OutputExistsException if the folder exists
   * @throws OutputFailedException if it cannot be written
   */
  public static void write(Path folder, Estuary estuary, int season) {
    publish(folder, temporary -> writeSurvey(temporary, estuary, season));
  }

  /**
   * Writes invented scars and channels on existing beds: {@code scars.gpkg}, {@code channels.gpkg},
   * {@code planted-hot-spots.gpkg} and a survey file that names them and the beds.
   *
   * @param folder folder to create
   * @param name name of the survey
   * @param scars what was invented
   * @param crsCode reference system it was invented in
   * @param beds the file of beds
   * @throws OutputExistsException if the folder exists
   * @throws OutputFailedException if it cannot be written
   */
  public static void write(
      Path folder, String name, InventedScars scars, String crsCode, BedFile beds) {
    publish(
        folder,
        temporary -> {
          MapGrids grids = new MapGrids(crsCode);
          LocalDate date = scars.settings().surveyDate();
          SampleTables.ScarStyle style = SampleTables.ScarStyle.PLAIN;
          geoPackage(
              temporary.resolve("scars.gpkg"),
              grids,
              date,
              SampleTables.scars(style, scars::scars, List.of()));
          geoPackage(
              temporary.resolve("channels.gpkg"),
              grids,
              date,
              SampleTables.channels(scars.channels()));
          geoPackage(
              temporary.resolve("planted-hot-spots.gpkg"),
              grids,
              date,
              SampleTables.hotSpots(scars.plantedHotSpots()));
          SurveyToml toml = new SurveyToml(name, date);
          toml.layer("scars", "scars.gpkg");
          toml.scarAttributes(style);
          toml.layer("beds", beds.file());
          beds.layer().ifPresent(layer -> toml.entry("layer", layer));
          beds.crs().ifPresent(crs -> toml.entry("crs", crs));
          beds.textureAttribute().ifPresent(word -> toml.attributes("beds", "texture", word));
          toml.layer("channels", "channels.gpkg");
          toml.attributes("channels", "id", "channel_id", "name", "name");
          text(temporary.resolve(SURVEY_FILE), toml.text());
        });
  }

  private static void writeSurvey(Path folder, Estuary estuary, int season) throws IOException {
    MapGrids grids = new MapGrids(Estuary.CRS);
    LocalDate date = estuary.settings().surveyDate(season);
    SampleTables.ScarStyle style = style(season);
    List<ResultTable.Row> blemishes =
        season == 0 ? Blemishes.of(style, estuary.scars(season)) : List.of();
    geoPackage(
        folder.resolve("scars.gpkg"),
        grids,
        date,
        SampleTables.scars(style, () -> estuary.scars(season), blemishes));
    geoPackage(
        folder.resolve("beds.gpkg"),
        grids,
        date,
        SampleTables.beds(estuary.beds(), style.hasNotes()));
    geoPackage(
        folder.resolve("land.gpkg"),
        grids,
        date,
        SampleTables.areas("land", "Mainland, barrier or islet.", estuary.land()));
    ResultTable areas =
        SampleTables.areas("areas", "A management area.", estuary.managementAreas());
    GeoPackageWriter.write(
        folder.resolve("areas.gpkg"),
        false,
        MapGrids.LONGITUDE_LATITUDE,
        grids.degreesWkt(),
        List.of(SampleTables.moved(areas, grids::toDegrees)),
        noon(date));
    GeoJsonTableWriter.write(
        folder.resolve("channels.geojson"),
        false,
        SampleTables.moved(SampleTables.channels(estuary.channels()), grids::toDegrees));
    GeoJsonTableWriter.write(
        folder.resolve("surveyed-area.geojson"),
        false,
        SampleTables.moved(
            SampleTables.areas("surveyed_area", "What was surveyed.", estuary.surveyedArea()),
            grids::toDegrees));
    writeDepth(folder.resolve("depth.asc"), estuary.depth());
    text(folder.resolve("depth.prj"), Estuary.ESRI_WKT + "\n");
    text(folder.resolve(SURVEY_FILE), surveyFile(estuary, date, style));
  }

  /** How a season's survey writes its scars down. */
  static SampleTables.ScarStyle style(int season) {
    String prefix = String.format(Locale.ROOT, "S%d-", season + 1);
    return season == 0
        ? new SampleTables.ScarStyle(prefix, "width_m", 1, "prop", false)
        : new SampleTables.ScarStyle(prefix, "width_cm", 100, "propeller", true);
  }

  private static String surveyFile(Estuary estuary, LocalDate date, SampleTables.ScarStyle style) {
    SurveyToml toml = new SurveyToml(estuary.name() + " " + date.getYear(), date);
    toml.layer("scars", "scars.gpkg");
    toml.entry("layer", "scars");
    toml.scarAttributes(style);
    toml.layer("beds", "beds.gpkg");
    if (style.hasNotes()) {
      toml.attributes(
          "beds", "id", "bed_id", "species", "species", "texture", "texture", "muck", "muck");
    } else {
      toml.attributes("beds", "id", "bed_id", "species", "species", "texture", "texture");
    }
    toml.layer("channels", "channels.geojson");
    toml.attributes("channels", "id", "channel_id", "name", "name");
    toml.layer("management_areas", "areas.gpkg");
    toml.attributes("management_areas", "id", "area_id", "name", "name");
    toml.layer("surveyed_area", "surveyed-area.geojson");
    toml.attributes("surveyed_area", "id", "area_id");
    toml.layer("barriers", "land.gpkg");
    toml.attributes("barriers", "id", "area_id");
    toml.layer("depth", "depth.asc");
    return toml.text();
  }

  /** ESRI ASCII grid, rows from the north. */
  private static void writeDepth(Path file, DepthGrid depth) throws IOException {
    try (OutputStream stream = Files.newOutputStream(file);
        Writer out =
            new BufferedWriter(new OutputStreamWriter(stream, StandardCharsets.US_ASCII))) {
      out.write("ncols " + depth.columns() + "\n");
      out.write("nrows " + depth.rows() + "\n");
      out.write("xllcorner " + plain(depth.westMetres()) + "\n");
      out.write("yllcorner " + plain(depth.southMetres()) + "\n");
      out.write("cellsize " + plain(depth.cellMetres()) + "\n");
      out.write("NODATA_value " + NO_DATA + "\n");
      for (int row = 0; row < depth.rows(); row++) {
        StringBuilder line = new StringBuilder();
        for (int column = 0; column < depth.columns(); column++) {
          float value = depth.depthsMetres()[row * depth.columns() + column];
          line.append(column == 0 ? "" : " ")
              .append(Float.isNaN(value) ? NO_DATA : Float.toString(value));
        }
        out.write(line.append('\n').toString());
      }
    }
  }

  private static String plain(double value) {
    return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }

  private static void geoPackage(Path file, MapGrids grids, LocalDate date, ResultTable table) {
    GeoPackageWriter.write(file, false, grids.code(), grids.wkt(), List.of(table), noon(date));
  }

  private static Instant noon(LocalDate date) {
    return date.atTime(12, 0).toInstant(ZoneOffset.UTC);
  }

  private static void text(Path file, String text) throws IOException {
    Files.writeString(file, text, StandardCharsets.UTF_8);
  }

  /** Creates a folder that is complete or not there at all. */
  static void publish(Path folder, OutputFolder.Content content) {
    OutputFolder.neverReplaced(folder).write(content);
  }
}
