package org.meadowmark.core.write.proposal;

import java.util.List;
import java.util.Map;

/** What the template of a crew sheet shows; {@code css} is made here, the rest is escaped. */
record CrewView(
    Map<String, String> t,
    String css,
    String title,
    String description,
    String surveyLine,
    String window,
    List<SheetView.KeyFigure> figures,
    List<String> before,
    String way,
    String caption,
    List<Visit> visits,
    List<String> capped,
    List<String> cautions,
    List<String> notes) {

  record Visit(
      String visit,
      String scar,
      String site,
      String latitude,
      String longitude,
      String length,
      String units,
      String rows,
      String fill,
      boolean fillMissing,
      String dug,
      String depth,
      boolean depthMissing) {}
}
