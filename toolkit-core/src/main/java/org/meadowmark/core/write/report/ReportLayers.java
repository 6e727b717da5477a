package org.meadowmark.core.write.report;

import java.util.List;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Phrases;
import org.meadowmark.core.write.report.MapLayer.Form;

/** Makes the layers of the map, those below first; within a layer what matters most comes first. */
final class ReportLayers {
  /** Features of a layer beyond this are left out of the page, and counted. */
  static final int MOST_FEATURES = 100_000;

  private ReportLayers() {}

  /**
   * The layers, those to draw first first.
   *
   * @param most features of a layer to take
   */
  static List<MapLayer> of(AssessedSurvey assessed, Phrases text, int most) {
    LayerWords words = new LayerWords(assessed.references(), text);
    GrassLayers grass = new GrassLayers(assessed, words, most);
    ScarLayers scars = new ScarLayers(assessed, words, most);
    ChannelLayers channels = new ChannelLayers(assessed, words, most);
    return List.of(
        background("land", Form.AREA, assessed.survey().barriers(), text, most),
        background("surveyed", Form.OUTLINE, assessed.survey().surveyedArea(), text, most),
        grass.beds(),
        grass.areas(),
        grass.patches(),
        channels.zones(),
        channels.segments(),
        scars.gaps(),
        scars.scars(),
        scars.repairs(),
        channels.marks());
  }

  private static MapLayer background(
      String key, Form form, List<MapArea> areas, Phrases text, int most) {
    return MapLayer.of(key, form, areas, most)
        .build(MapArea::geometry, text.get("class." + key), key);
  }
}
