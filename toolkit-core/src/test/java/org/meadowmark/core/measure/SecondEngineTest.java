package org.meadowmark.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.CoordinateFilter;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.read.ReadLayer;

/**
 * Fifty real beds with seeded scars against a second geometry engine, GEOS: values recorded by
 * {@code src/test/scripts/second-engine.py}, whose versions stand in the first line of the values.
 * Skipped where the open seagrass polygons are not beside the project in {@code shared/data}.
 */
class SecondEngineTest {
  private static final double SURVEY_FOOT_METRES = 1200.0 / 3937.0;
  private static final Percentage AREA = Percentage.withPercentage(1e-4);
  private static final double DISTANCE_METRES = 1e-6;

  @Test
  void realBedsWithScarsAgreeWithGeos() throws IOException {
    Path file =
        Path.of(System.getProperty("meadowmark.root", "."))
            .resolve("../shared/data/tampa-bay-seagrass-1999.gpkg");
    assumeTrue(Files.exists(file), file + " is absent: the second engine is not compared");
    Map<String, Geometry> beds = new HashMap<>();
    ReadLayer.of(file)
        .features()
        .forEach(
            feature ->
                beds.put(feature.ref().featureId(), inMetres(feature.geometry().orElseThrow())));
    Map<String, List<CSVRecord>> scars = new HashMap<>();
    for (CSVRecord scar : rows("second-engine-scars.csv")) {
      scars.computeIfAbsent(scar.get("bed"), key -> new ArrayList<>()).add(scar);
    }
    List<CSVRecord> values = rows("second-engine-values.csv");
    assertThat(values).hasSize(50);
    for (CSVRecord expected : values) {
      String bed = expected.get("bed");
      TestSurvey survey = new TestSurvey().bed(bed, beds.get(bed));
      for (CSVRecord scar : scars.get(bed)) {
        survey.scar(scar.get("scar"), scar.get("wkt"), number(scar, "width_m"));
      }
      compare(survey.measure(), expected);
    }
  }

  private static void compare(Measurement measured, CSVRecord expected) {
    String bed = "bed " + expected.get("bed");
    Damage damage = measured.whole().damage();
    Fragmentation pieces = measured.whole().fragmentation();
    assertThat(damage.grassSquareMetres()).as(bed).isCloseTo(number(expected, "bed_area_m2"), AREA);
    assertThat(damage.scarredSquareMetres())
        .as(bed)
        .isCloseTo(number(expected, "scarred_area_m2"), AREA);
    assertThat(damage.grassSquareMetres() - damage.scarredSquareMetres())
        .as(bed)
        .isCloseTo(number(expected, "remaining_area_m2"), AREA);
    assertThat(pieces.after().patchCount())
        .as(bed)
        .isEqualTo(Integer.parseInt(expected.get("patches")));
    assertThat(pieces.crumbsAfter()).as(bed).isEqualTo(Integer.parseInt(expected.get("crumbs")));
    assertThat(pieces.after().edgeMetres())
        .as(bed)
        .isCloseTo(number(expected, "edge_length_m"), AREA);
    assertThat(pieces.after().mesh().squareMetres().getAsDouble())
        .as(bed)
        .isCloseTo(number(expected, "mesh_size_m2"), AREA);
    double[] nearest =
        measured.patches().stream()
            .flatMapToDouble(patch -> patch.nearestDistanceMetres().stream())
            .sorted()
            .toArray();
    double[] recorded =
        Arrays.stream(expected.get("nearest_distances_m").split(" "))
            .filter(text -> !text.isEmpty())
            .mapToDouble(Double::parseDouble)
            .toArray();
    assertThat(nearest).as(bed).hasSameSizeAs(recorded);
    for (int i = 0; i < nearest.length; i++) {
      assertThat(nearest[i]).as(bed).isCloseTo(recorded[i], within(DISTANCE_METRES));
    }
  }

  private static Geometry inMetres(Geometry feet) {
    Geometry metres = feet.copy();
    metres.apply(
        (CoordinateFilter)
            c -> {
              c.x *= SURVEY_FOOT_METRES;
              c.y *= SURVEY_FOOT_METRES;
            });
    metres.geometryChanged();
    return metres;
  }

  private static double number(CSVRecord row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static List<CSVRecord> rows(String name) throws IOException {
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setCommentMarker('#')
            .setHeader()
            .setSkipHeaderRecord(true)
            .get();
    try (Reader reader =
        new InputStreamReader(
            Objects.requireNonNull(SecondEngineTest.class.getResourceAsStream(name), name),
            StandardCharsets.UTF_8)) {
      return format.parse(reader).getRecords();
    }
  }
}
