package org.meadowmark.core.partition;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.meadowmark.core.measure.ConnectivityDetail;
import org.meadowmark.core.measure.Measurement;

/** Two measurements are the same to the last bit of every number. */
final class SameMeasurement {
  private SameMeasurement() {}

  static void check(Measurement inParts, Measurement atOnce) {
    same("scars", inParts.scars(), atOnce.scars());
    same("scars in beds", inParts.scarsInBeds(), atOnce.scarsInBeds());
    same("beds", inParts.beds(), atOnce.beds());
    same("scarred grass", inParts.scarredGrass(), atOnce.scarredGrass());
    same("patches", inParts.patches(), atOnce.patches());
    same("gaps", inParts.gaps(), atOnce.gaps());
    same("areas", inParts.areas(), atOnce.areas());
    assertThat(inParts.connectivity().map(ConnectivityDetail::patches))
        .isEqualTo(atOnce.connectivity().map(ConnectivityDetail::patches));
    assertThat(inParts.connectivity().map(ConnectivityDetail::scars))
        .isEqualTo(atOnce.connectivity().map(ConnectivityDetail::scars));
  }

  private static void same(String what, List<?> inParts, List<?> atOnce) {
    assertThat(inParts).as(what).hasSameSizeAs(atOnce);
    for (int i = 0; i < atOnce.size(); i++) {
      assertThat((Object) inParts.get(i)).as(what + ", row " + i).isEqualTo(atOnce.get(i));
    }
  }
}
