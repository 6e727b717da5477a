package org.meadowmark.cluster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBWriter;
import org.locationtech.jts.io.WKTReader;

/** A survey of a bed and a scar, in files of a row or two. */
final class SmallSurvey {
  static final String NAME = "Small";
  static final String UTM = "{\"name\":\"utm\",\"id\":{\"authority\":\"EPSG\",\"code\":32617}}";
  static final String SCAR = "LINESTRING (500010 3000010, 500040 3000012)";
  static final String BED =
      "POLYGON ((500000 3000000, 500100 3000000, 500100 3000100, 500000 3000100, 500000 3000000))";

  private SmallSurvey() {}

  /** Writes the survey file. */
  static void file(Path folder) throws IOException {
    Files.writeString(
        folder.resolve("survey.toml"),
        """
        [survey]
        name = "Small"
        [layers.scars]
        file = "scars.parquet"
        [layers.beds]
        file = "beds.parquet"
        """);
  }

  /** Writes a layer; only its first feature names a bay. */
  static void layer(Path folder, String name, String crs, String... geometries)
      throws ParseException {
    List<RawGeoParquet.Plain> features = new ArrayList<>();
    for (String geometry : geometries) {
      features.add(new RawGeoParquet.Plain(features.isEmpty() ? "north" : null, wkb(geometry)));
    }
    RawGeoParquet.writePlain(
        folder.resolve(name + ".parquet"), features, Optional.of(RawGeoParquet.geo(crs)));
  }

  static byte[] wkb(String geometry) throws ParseException {
    return new WKBWriter().write(new WKTReader().read(geometry));
  }
}
