package org.meadowmark.core.hostile;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.assessment.LoadedSurvey;
import org.meadowmark.core.assessment.SurveyLoader;
import org.meadowmark.core.assessment.comparison.MarkerReader;
import org.meadowmark.core.assessment.comparison.MarkerReader.MarkerFile;
import org.meadowmark.core.check.FindingLog;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.project.AnalysisGrid;
import org.meadowmark.core.project.CrsCatalog;
import org.meadowmark.core.project.DepthGrid;
import org.meadowmark.core.project.PointProjector;
import org.meadowmark.core.rank.SegmentScars;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.LayerReaders;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.reference.TableLibrary;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyFile;

/** Everything that reads a file which another person made, each as a way to take any bytes. */
enum HostileReader {
  GEOPACKAGE("gpkg") {
    @Override
    void read(Path folder, byte[] bytes) throws IOException {
      readLayer(write(folder, "t.gpkg", bytes));
    }
  },
  /** The parts one after the other: .shp, .shx, .dbf, .prj, .cpg, with a mark between two. */
  SHAPEFILE("parts") {
    @Override
    void read(Path folder, byte[] bytes) throws IOException {
      List<byte[]> parts = parts(bytes);
      for (int i = 0; i < SHAPEFILE_ENDINGS.size(); i++) {
        Path file = folder.resolve("t." + SHAPEFILE_ENDINGS.get(i));
        if (i < parts.size() && parts.get(i).length > 0) {
          Files.write(file, parts.get(i));
        } else {
          Files.deleteIfExists(file);
        }
      }
      if (Files.exists(folder.resolve("t.shp"))) {
        readLayer(folder.resolve("t.shp"));
      }
    }
  },
  GEOJSON("geojson") {
    @Override
    void read(Path folder, byte[] bytes) throws IOException {
      readLayer(write(folder, "t.geojson", bytes));
    }
  },
  CSV("csv") {
    @Override
    void read(Path folder, byte[] bytes) throws IOException {
      readLayer(write(folder, "t.csv", bytes));
    }
  },
  GPX("gpx") {
    @Override
    void read(Path folder, byte[] bytes) throws IOException {
      readLayer(write(folder, "t.gpx", bytes));
    }
  },
  ASCII_GRID("asc") {
    @Override
    void read(Path folder, byte[] bytes) throws IOException {
      readGrid(write(folder, "t.asc", bytes), true);
    }
  },
  GEOTIFF("tif") {
    @Override
    void read(Path folder, byte[] bytes) throws IOException {
      readGrid(write(folder, "t.tif", bytes), false);
    }
  },
  DEPTH_POINTS("csv") {
    @Override
    void read(Path folder, byte[] bytes) throws IOException {
      Path file = write(folder, "t.csv", bytes);
      load(
          List.of(
              LayerSource.of(LayerRole.BEDS, goodBeds(folder)).withCrs(GRID),
              LayerSource.of(LayerRole.SCARS, goodScars(folder)).withCrs(GRID),
              LayerSource.of(LayerRole.DEPTH, file).withCrs(GRID)));
    }
  },
  SURVEY("toml") {
    @Override
    void read(Path folder, byte[] bytes) throws IOException {
      SurveyFile.read(
          write(folder, "survey.toml", bytes), ParametersTable.bundled(), TestSurvey.tables());
    }
  },
  MARKERS("csv") {
    @Override
    void read(Path folder, byte[] bytes) throws IOException {
      Path file = write(folder, "t.csv", bytes);
      TestSurvey survey = new TestSurvey().channel("c1", "Long Reach", "LINESTRING (0 0, 1000 0)");
      new MarkerReader(
              new MarkerFile(file, Optional.of(GRID)),
              new SegmentScars(survey.build(), survey.parameters()),
              GRID,
              300)
          .read()
          .findings()
          .forEach(Contract::check);
    }
  },
  CRS("wkt") {
    @Override
    void read(Path folder, byte[] bytes) {
      String text = new String(bytes, StandardCharsets.UTF_8);
      CrsText crs =
          text.length() < 60 && !text.contains("[") && !text.isBlank()
              ? CrsText.ofCode(text)
              : CrsText.ofWkt(text);
      new PointProjector(crs, GRID, FeatureRef.layer("t.prj", ""))
          .project(TestSurvey.wkt("LINESTRING (-82 27, 350000 3080000)"));
    }
  },
  TABLES("csv") {
    @Override
    void read(Path folder, byte[] bytes) throws IOException {
      Path tables = Files.createDirectories(folder.resolve("tables"));
      write(tables, "species.csv", bytes);
      ReferenceTablesReader.read(TableLibrary.of(tables));
    }
  };

  private static final String GRID = "EPSG:32617";
  private static final byte[] PART_MARK = "\n%part%\n".getBytes(StandardCharsets.US_ASCII);
  private static final List<String> SHAPEFILE_ENDINGS = List.of("shp", "shx", "dbf", "prj", "cpg");
  private static final String BEDS =
      "id,wkt\nb1,\"POLYGON ((500000 3000000, 500200 3000000, 500200 3000200, 500000 3000200,"
          + " 500000 3000000))\"\n";
  private static final String SCARS =
      "id,wkt\ns1,\"LINESTRING (500010 3000010, 500090 3000010)\"\n";

  private final String ending;

  HostileReader(String ending) {
    this.ending = ending;
  }

  /**
   * Reads the bytes as a file of this kind, and what was read as a survey would.
   *
   * @param folder folder that nothing else uses; files of an earlier call are written over
   * @throws org.meadowmark.core.model.MeadowmarkException if the file is refused as it should be
   */
  abstract void read(Path folder, byte[] bytes) throws IOException;

  /** Folder name of its examples. */
  String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Ending of its examples. */
  String ending() {
    return ending;
  }

  static HostileReader ofKey(String key) {
    return Arrays.stream(values()).filter(r -> r.key().equals(key)).findFirst().orElseThrow();
  }

  /** Joins the parts of a shapefile. */
  static byte[] joined(List<byte[]> parts) {
    java.io.ByteArrayOutputStream joined = new java.io.ByteArrayOutputStream();
    for (int i = 0; i < parts.size(); i++) {
      if (i > 0) {
        joined.writeBytes(PART_MARK);
      }
      joined.writeBytes(parts.get(i));
    }
    return joined.toByteArray();
  }

  static List<byte[]> parts(byte[] bytes) {
    List<byte[]> parts = new ArrayList<>();
    int start = 0;
    for (int i = 0; i <= bytes.length; i++) {
      boolean mark =
          i + PART_MARK.length <= bytes.length
              && Arrays.equals(bytes, i, i + PART_MARK.length, PART_MARK, 0, PART_MARK.length);
      if (mark || i == bytes.length) {
        parts.add(Arrays.copyOfRange(bytes, start, i));
        start = i + PART_MARK.length;
        i = mark ? start - 1 : i;
      }
    }
    return parts;
  }

  private static Path write(Path folder, String name, byte[] bytes) throws IOException {
    return Files.write(folder.resolve(name), bytes);
  }

  private static Path goodBeds(Path folder) throws IOException {
    return Files.writeString(folder.resolve("beds.csv"), BEDS);
  }

  private static Path goodScars(Path folder) throws IOException {
    return Files.writeString(folder.resolve("scars.csv"), SCARS);
  }

  /** As a plain layer, then as every layer of a survey at once. */
  private static void readLayer(Path file) {
    LayerReaders.read(LayerSource.of(LayerRole.SCARS, file), new CheckingSink());
    LayerSource beds = LayerSource.of(LayerRole.BEDS, file);
    load(
        List.of(
            LayerSource.of(LayerRole.SCARS, file).withCrs(GRID),
            beds.withCrs(GRID),
            LayerSource.of(LayerRole.CHANNELS, file).withCrs(GRID),
            LayerSource.of(LayerRole.DEPTH, file).withCrs(GRID)));
  }

  private static void readGrid(Path file, boolean stateCrs) {
    LayerSource plain = LayerSource.of(LayerRole.DEPTH, file);
    CrsCatalog catalog = new CrsCatalog();
    FindingLog log = new FindingLog();
    DepthGrid.read(
            stateCrs ? plain.withCrs(GRID) : plain,
            AnalysisGrid.ofCode(GRID, catalog),
            catalog,
            log)
        .depthMetres(500_000, 3_000_000);
    log.sorted().forEach(Contract::check);
  }

  private static void load(List<LayerSource> layers) {
    SurveyDefinition definition =
        new SurveyDefinition(
            "survey", Optional.empty(), Optional.empty(), layers, new TestSurvey().parameters());
    LoadedSurvey loaded = new SurveyLoader(definition, TestSurvey.tables(), Progress.NONE).load();
    loaded.findings().forEach(Contract::check);
    loaded.survey().ifPresent(survey -> survey.beds().forEach(bed -> finite(bed.geometry())));
  }

  private static void finite(Geometry geometry) {
    if (!Double.isFinite(geometry.getArea())) {
      throw new IllegalStateException("an area that is not finite: " + geometry);
    }
  }

  private static final class CheckingSink implements FeatureSink {
    private boolean headerCame;

    @Override
    public void header(LayerHeader header) {
      headerCame = true;
    }

    @Override
    public void feature(SourceFeature feature) {
      if (!headerCame) {
        throw new IllegalStateException("a feature before the header");
      }
    }

    @Override
    public void finding(Finding finding) {
      Contract.check(finding);
    }
  }

  /** Opens the database of reference systems, and has it look for a system by its name. */
  static void warmUp() {
    new PointProjector(
        CrsText.ofWkt(
            "GEOGCS[\"none\",DATUM[\"none\",SPHEROID[\"none\",6378137,298]],PRIMEM[\"Greenwich\",0],"
                + "UNIT[\"Degree\",0.0174532925199433]]"),
        GRID,
        FeatureRef.layer("t.prj", ""));
  }

  /** Runs a reader and turns what may happen into an answer. */
  Outcome outcome(Path folder, byte[] bytes) {
    try {
      read(folder, bytes);
      return Outcome.READ;
    } catch (org.meadowmark.core.model.MeadowmarkException e) {
      Contract.check(e.getMessage());
      return Outcome.REFUSED;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** How a file ended that did no harm. */
  enum Outcome {
    READ,
    REFUSED
  }
}
