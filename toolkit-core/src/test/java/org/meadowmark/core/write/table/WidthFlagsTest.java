package org.meadowmark.core.write.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.Setting;

class WidthFlagsTest {
  /** Accuracy at 95 % of a radial RMSE of 0.469042 m: 0.811817 m (arithmetic after the NSSDA). */
  @Test
  void widthsAreComparedWithPixelAndPositionalAccuracy() {
    Parameters parameters =
        ParametersTable.bundled()
            .parameters(
                List.of(
                    new Setting("position_rmse_m", List.of("0.469042"), "test"),
                    new Setting("pixel_size_m", List.of("0.3"), "test")));
    assertThat(flags(parameters, 0.299)).containsExactly(true, true);
    assertThat(flags(parameters, 0.3)).containsExactly(false, true);
    assertThat(flags(parameters, 0.811)).containsExactly(false, true);
    assertThat(flags(parameters, 0.812)).containsExactly(false, false);
  }

  @Test
  void nothingStatedMarksNothing() {
    assertThat(flags(ParametersTable.bundled().defaults(), 0.01)).containsExactly(null, null);
  }

  private static List<Object> flags(Parameters parameters, double width) {
    TableLayout.Builder<Double> table =
        TableLayout.named("widths", Comparator.naturalOrder(), "A width.");
    WidthFlags.add(table, parameters, OptionalDouble::of);
    List<Object> flags = new ArrayList<>();
    table.build().table(List.of(width)).rows().forEach(row -> flags.addAll(row.values()));
    return flags;
  }
}
