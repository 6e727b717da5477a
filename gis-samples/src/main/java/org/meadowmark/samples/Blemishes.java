package org.meadowmark.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.meadowmark.core.write.ResultTable.Row;

/**
 * A few mistakes of the kind that real layers have: added rows, so that the scars themselves stay
 * as they were made. They have no {@code truth_id}.
 */
final class Blemishes {
  private static final int COPIED = 3;

  private Blemishes() {}

  /** A scar mapped twice, one with no width, one with a mistyped cause and one with no geometry. */
  static List<Row> of(SampleTables.ScarStyle style, Stream<SampleScar> scars) {
    List<SampleScar> lines =
        scars.filter(scar -> scar.cause().equals(CauseKind.PROPELLER.key)).limit(COPIED).toList();
    List<Row> rows = new ArrayList<>();
    if (lines.size() < COPIED) {
      return rows;
    }
    SampleScar twice = lines.get(0);
    rows.add(row(style, 1, style.propellerWord(), width(style, twice), twice, Optional.of(0.0)));
    rows.add(row(style, 2, style.propellerWord(), null, lines.get(1), Optional.of(7.5)));
    rows.add(row(style, 3, "proppeller", width(style, twice), lines.get(2), Optional.of(7.5)));
    rows.add(row(style, 4, style.propellerWord(), width(style, twice), twice, Optional.empty()));
    return rows;
  }

  private static Double width(SampleTables.ScarStyle style, SampleScar scar) {
    return Math.rint(scar.widthMetres().orElseThrow() * style.unitsAMetre() * 100) / 100;
  }

  private static Row row(
      SampleTables.ScarStyle style,
      int number,
      String cause,
      Double width,
      SampleScar like,
      Optional<Double> aside) {
    return new Row(
        Arrays.asList(style.idPrefix() + "X" + number, null, cause, width, like.seenOn()),
        aside.map(
            metres ->
                metres == 0
                    ? like.geometry()
                    : AffineTransformation.translationInstance(metres, metres)
                        .transform(like.geometry())));
  }
}
