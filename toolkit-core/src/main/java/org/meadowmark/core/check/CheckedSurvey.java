package org.meadowmark.core.check;

import java.util.List;
import java.util.stream.Stream;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.Scar;

/**
 * The checked layers of a survey, each in its file's coordinates; a role may have several layers.
 *
 * @param scars scar layers
 * @param beds bed layers
 * @param channels channel layers
 * @param managementAreas layers of areas that totals are reported for
 * @param surveyedArea layers of what was looked at
 * @param barriers layers of land and structures
 * @param soundings layers of points with a depth
 */
public record CheckedSurvey(
    List<CheckedLayer<Scar>> scars,
    List<CheckedLayer<Bed>> beds,
    List<CheckedLayer<Channel>> channels,
    List<CheckedLayer<MapArea>> managementAreas,
    List<CheckedLayer<MapArea>> surveyedArea,
    List<CheckedLayer<MapArea>> barriers,
    List<CheckedLayer<Sounding>> soundings) {
  /**
   * Keeps copies of the lists of layers.
   *
   * @param scars scar layers
   * @param beds bed layers
   * @param channels channel layers
   * @param managementAreas layers of areas that totals are reported for
   * @param surveyedArea layers of what was looked at
   * @param barriers layers of land and structures
   * @param soundings layers of points with a depth
   * @throws NullPointerException if a list or a layer in it is null
   */
  public CheckedSurvey {
    scars = List.copyOf(scars);
    beds = List.copyOf(beds);
    channels = List.copyOf(channels);
    managementAreas = List.copyOf(managementAreas);
    surveyedArea = List.copyOf(surveyedArea);
    barriers = List.copyOf(barriers);
    soundings = List.copyOf(soundings);
  }

  /** {@return all layers, role by role} */
  public List<CheckedLayer<?>> layers() {
    return Stream.<List<? extends CheckedLayer<?>>>of(
            scars, beds, channels, managementAreas, surveyedArea, barriers, soundings)
        .<CheckedLayer<?>>flatMap(List::stream)
        .toList();
  }
}
