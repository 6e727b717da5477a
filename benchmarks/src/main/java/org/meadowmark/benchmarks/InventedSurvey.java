package org.meadowmark.benchmarks;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.Scar.WidthSource;
import org.meadowmark.core.project.AnalysisGrid;
import org.meadowmark.core.project.CrsCatalog;
import org.meadowmark.core.project.GeodesicGroundScale;
import org.meadowmark.samples.Estuary;
import org.meadowmark.samples.EstuaryGenerator;
import org.meadowmark.samples.EstuarySettings;
import org.meadowmark.samples.SampleScar;

/** Surveys of an invented estuary, always the same for the same number of scars. */
public final class InventedSurvey {
  /** Beds stay the same, so that times grow with scars alone. */
  private static final int BEDS = 2_000;

  private InventedSurvey() {}

  /** One season that saw so many scars, on the grid, with ground scale. */
  public static MetricSurvey withScars(int count) {
    EstuarySettings sample = EstuarySettings.SAMPLE;
    Estuary estuary =
        EstuaryGenerator.generate(
            new EstuarySettings(
                sample.seed(),
                count,
                BEDS,
                1,
                sample.plantedHotSpots(),
                sample.hotSpotElevation(),
                sample.lastSurvey()));
    AnalysisGrid grid = AnalysisGrid.ofCode(Estuary.CRS, new CrsCatalog());
    return new MetricSurvey(
        grid.label(),
        grid.wkt(),
        estuary.scars(0).map(InventedSurvey::scar).toList(),
        inOrder(estuary.beds()),
        inOrder(estuary.channels()),
        inOrder(estuary.managementAreas()),
        inOrder(estuary.surveyedArea()),
        inOrder(estuary.land()),
        DepthField.UNKNOWN,
        new GeodesicGroundScale(grid));
  }

  /** Ids have one width, so scars come in their order. */
  private static Scar scar(SampleScar seen) {
    String id = String.format(Locale.ROOT, "S%08d", seen.truthId());
    return new Scar(
        id,
        new FeatureRef("scars", "scars", id),
        seen.geometry(),
        seen.cause(),
        seen.widthMetres().orElse(0),
        seen.widthMetres().isPresent() ? WidthSource.MEASURED : WidthSource.OUTLINE,
        Optional.of(seen.seenOn()));
  }

  private static <T extends Located> List<T> inOrder(List<T> features) {
    List<T> sorted = new ArrayList<>(features);
    sorted.sort(Comparator.comparing(T::id, Ids.ORDER));
    return sorted;
  }
}
