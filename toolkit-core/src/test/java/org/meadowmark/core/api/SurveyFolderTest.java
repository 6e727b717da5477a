package org.meadowmark.core.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.meadowmark.core.model.MeadowmarkException;

/** A survey of a square bed with one straight scar, through the public interface alone. */
class SurveyFolderTest {
  @TempDir Path folder;

  private SurveyFolder survey() throws IOException {
    Files.writeString(
        folder.resolve("beds.csv"),
        "id;wkt\nb;\"POLYGON ((500000 3000000, 500100 3000000, 500100 3000100, 500000 3000100, 500000"
            + " 3000000))\"\n");
    Files.writeString(
        folder.resolve("scars.csv"),
        "id;width_m;wkt\ns;0.5;\"LINESTRING (500020 3000050, 500080 3000050)\"\n");
    Files.writeString(
        folder.resolve("survey.toml"),
        """
        [survey]
        name = "Square"
        [[layers.beds]]
        file = "beds.csv"
        crs = "EPSG:32617"
        wkt_column = "wkt"
        [[layers.scars]]
        file = "scars.csv"
        crs = "EPSG:32617"
        wkt_column = "wkt"
        attributes.width = "width_m"
        """);
    return SurveyFolder.at(folder)
        .withParameter("ground_scale", "false")
        .withParameter("uncertainty_draws", "0");
  }

  @Test
  void givesTheFiguresOfAStraightScar() throws IOException {
    SurveyResults results = survey().assess();

    assertThat(results.name()).isEqualTo("Square");
    assertThat(results.date()).isEmpty();
    assertThat(results.areas()).isEmpty();
    assertThat(results.segments()).isEmpty();
    AreaDamage whole = results.whole();
    assertThat(whole.grassSquareMetres()).isCloseTo(10_000, Percentage.withPercentage(1e-6));
    assertThat(whole.scarLengthMetres()).isCloseTo(60, Percentage.withPercentage(1e-6));
    // A band of 60 m by 0.5 m; its ends add at most a circle of 0.25 m radius.
    assertThat(whole.scarredSquareMetres()).isBetween(30.0, 30.0 + Math.PI / 16);
    assertThat(whole.scarredRange()).isEmpty();
    assertThat(whole.scarCount()).isEqualTo(1);
  }

  @Test
  void aParameterIsChecked() throws IOException {
    SurveyFolder wrong = survey().withParameter("no_such_thing", "1");

    assertThatThrownBy(wrong::assess)
        .isInstanceOf(MeadowmarkException.class)
        .hasMessageContaining("no_such_thing");
  }

  @Test
  void writesTheOutputFolder() throws IOException {
    Path output = folder.resolve("results");

    String summary = survey().assessInto(output, false);

    assertThat(summary).contains("Square");
    assertThat(output.resolve("run-record.json")).content().contains("uncertainty_draws");
  }
}
