package org.meadowmark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;

/** A survey that is assessed in a moment: four beds and a few scars, and a channel if wanted. */
final class TinySurvey {
  private static final int WEST = 340_000;
  private static final int SOUTH = 3_060_000;

  private TinySurvey() {}

  /** Writes a survey folder whose scars, beds and channel are CSV files. */
  static Path write(Path folder, boolean withChannel) throws IOException {
    Files.createDirectories(folder);
    StringBuilder beds = new StringBuilder("bed_id,species,wkt\n");
    for (int i = 0; i < 4; i++) {
      int west = WEST + i * 260;
      beds.append(
          String.format(
              Locale.ROOT,
              "B%d,turtle grass,\"POLYGON ((%d %d, %d %d, %d %d, %d %d, %d %d))\"%n",
              i + 1,
              west,
              SOUTH,
              west + 250,
              SOUTH,
              west + 250,
              SOUTH + 200,
              west,
              SOUTH + 200,
              west,
              SOUTH));
    }
    Files.writeString(folder.resolve("beds.csv"), beds);
    Random random = new Random(4);
    StringBuilder scars = new StringBuilder("scar_id,width_m,cause,wkt\n");
    for (int i = 0; i < 24; i++) {
      int x = WEST + random.nextInt(1000);
      int y = SOUTH + 5 + random.nextInt(180);
      scars.append(
          String.format(
              Locale.ROOT,
              "S%d,0.4,propeller,\"LINESTRING (%d %d, %d %d)\"%n",
              i + 1,
              x,
              y,
              x + random.nextInt(120) - 60,
              y + 10 + random.nextInt(50)));
    }
    Files.writeString(folder.resolve("scars.csv"), scars);
    String toml =
        """
        [survey]
        name = "Tern Flat"
        date = 2025-06-10

        [layers.scars]
        file = "scars.csv"
        crs = "EPSG:32617"
        attributes = { id = "scar_id", width = "width_m", cause = "cause" }

        [layers.beds]
        file = "beds.csv"
        crs = "EPSG:32617"
        attributes = { id = "bed_id", species = "species" }
        """;
    if (withChannel) {
      Files.writeString(
          folder.resolve("channels.csv"),
          String.format(
              Locale.ROOT,
              "channel_id,name,wkt%nC1,Tern Cut,\"LINESTRING (%d %d, %d %d)\"%n",
              WEST - 50,
              SOUTH - 20,
              WEST + 1100,
              SOUTH - 30));
      toml +=
          """

          [layers.channels]
          file = "channels.csv"
          crs = "EPSG:32617"
          attributes = { id = "channel_id", name = "name" }
          """;
    }
    Files.writeString(folder.resolve("survey.toml"), toml);
    return folder;
  }
}
