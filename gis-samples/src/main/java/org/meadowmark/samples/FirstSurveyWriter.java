package org.meadowmark.samples;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import org.meadowmark.core.model.OutputExistsException;
import org.meadowmark.core.model.OutputFailedException;
import org.meadowmark.core.write.GeoJsonTableWriter;
import org.meadowmark.core.write.GeoPackageWriter;

/**
 * Writes the first survey of an invented estuary: {@code tracks.gpx} with a few mistakes, {@code
 * channels.geojson}, and {@code beds.gpkg}, from which GDAL makes the shapefile of the bundled
 * survey (the shapefile writer among the dependencies gets the length of records with two rings
 * wrong).
 */
final class FirstSurveyWriter {
  private FirstSurveyWriter() {}

  /**
   * Writes a folder.
   *
   * @throws OutputExistsException if the folder exists
   * @throws OutputFailedException if it cannot be written
   */
  static void write(Path folder, Estuary estuary) {
    FirstSurvey survey = FirstSurvey.of(estuary);
    MapGrids grids = new MapGrids(Estuary.CRS);
    SurveyFolderWriter.publish(
        folder,
        temporary -> {
          ScarTracks.write(temporary.resolve("tracks.gpx"), survey.scars(), grids);
          GeoJsonTableWriter.write(
              temporary.resolve("channels.geojson"),
              false,
              SampleTables.moved(SampleTables.channels(survey.channels()), grids::toDegrees));
          GeoPackageWriter.write(
              temporary.resolve("beds.gpkg"),
              false,
              grids.code(),
              grids.wkt(),
              List.of(SampleTables.beds(survey.beds(), false)),
              estuary.settings().surveyDate(0).atTime(12, 0).toInstant(ZoneOffset.UTC));
        });
  }
}
