package org.meadowmark.core.project;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import org.meadowmark.core.check.CheckedLayer;
import org.meadowmark.core.check.CheckedSurvey;
import org.meadowmark.core.check.FindingLog;
import org.meadowmark.core.check.Sounding;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.DepthField;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.GroundScale;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.SurveyInputException;
import org.meadowmark.core.store.RowStore;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.Parameters;

/** Brings a checked survey to one metric grid. */
public final class SurveyProjector {
  private final CrsCatalog catalog;
  private final Parameters parameters;
  private final FindingLog log;
  private final Progress progress;
  private final Supplier<RowStore.Rows<Scar>> scarRows;

  /**
   * Creates the projector.
   *
   * @param catalog reference systems
   * @param parameters analysis grid and ground scale
   * @param log takes the findings
   * @param progress hears how far the work is
   */
  public SurveyProjector(
      CrsCatalog catalog, Parameters parameters, FindingLog log, Progress progress) {
    this(catalog, parameters, log, progress, RowStore::held);
  }

  /**
   * Creates a projector that keeps scars elsewhere.
   *
   * @param catalog reference systems
   * @param parameters analysis grid and ground scale
   * @param log takes the findings
   * @param progress hears how far the work is
   * @param scarRows gives rows that take scars
   */
  public SurveyProjector(
      CrsCatalog catalog,
      Parameters parameters,
      FindingLog log,
      Progress progress,
      Supplier<RowStore.Rows<Scar>> scarRows) {
    this.scarRows = scarRows;
    this.catalog = catalog;
    this.parameters = parameters;
    this.log = log;
    this.progress = progress;
  }

  /**
   * Projects a survey. The grid is the one the parameters name, else the UTM zone of the middle of
   * the beds, else of the scars, else of all layers (see {@link AnalysisGrid}). The middle is the
   * median longitude and latitude of the features, which a stray feature does not move.
   *
   * @param survey checked layers
   * @param depthGrids depth layers that are grids (see {@link DepthGrid#isGrid}); the first one
   *     that knows a place counts, then the soundings of the survey
   * @return everything on one grid in metres, with its scale and depths
   * @throws SurveyInputException if a reference system is unknown, a layer cannot lie where it
   *     says, or a depth grid cannot be read; the finding is not in the log yet
   */
  public MetricSurvey project(CheckedSurvey survey, List<LayerSource> depthGrids) {
    Map<CheckedLayer<?>, LayerPlace> places = new IdentityHashMap<>();
    List<LayerPlace> inOrder = new ArrayList<>();
    long total = 0;
    for (CheckedLayer<?> layer : survey.layers()) {
      LayerPlace place = new LayerPlace(layer, catalog);
      places.put(layer, place);
      inOrder.add(place);
      total += place.size();
    }
    new PlacementCheck(log).check(inOrder);
    AnalysisGrid grid = chooseGrid(inOrder);
    LayerProjector projector = new LayerProjector(grid, log, progress);
    progress.begin("Projecting", total);
    Roles roles = new Roles(projector, places);
    MetricSurvey projected =
        new MetricSurvey(
            grid.label(),
            grid.wkt(),
            roles.merge(LayerRole.SCARS, survey.scars(), SurveyProjector::withId, scarRows),
            roles.merge(LayerRole.BEDS, survey.beds(), SurveyProjector::withId),
            roles.merge(LayerRole.CHANNELS, survey.channels(), SurveyProjector::withId),
            roles.merge(
                LayerRole.MANAGEMENT_AREAS, survey.managementAreas(), SurveyProjector::withId),
            roles.merge(LayerRole.SURVEYED_AREA, survey.surveyedArea(), SurveyProjector::withId),
            roles.merge(LayerRole.BARRIERS, survey.barriers(), SurveyProjector::withId),
            depth(
                depthGrids,
                roles.merge(LayerRole.DEPTH, survey.soundings(), SurveyProjector::withId),
                grid),
            parameters.groundScale() ? new GeodesicGroundScale(grid) : GroundScale.NONE);
    progress.end();
    return projected;
  }

  private AnalysisGrid chooseGrid(List<LayerPlace> places) {
    if (parameters.analysisCrs().isPresent()) {
      return AnalysisGrid.ofCode(parameters.analysisCrs().get(), catalog);
    }
    for (LayerRole role : List.of(LayerRole.BEDS, LayerRole.SCARS)) {
      List<LayerPlace> ofRole = places.stream().filter(place -> place.role() == role).toList();
      OptionalDouble longitude = LayerPlace.medianLongitude(ofRole);
      if (longitude.isPresent()) {
        return AnalysisGrid.utm(
            longitude.getAsDouble(), LayerPlace.medianLatitude(ofRole).orElseThrow(), catalog);
      }
    }
    OptionalDouble longitude = LayerPlace.medianLongitude(places);
    if (longitude.isEmpty()) {
      throw new SurveyInputException(
          new Finding(
              FindingCode.NO_FEATURES,
              Finding.Level.ERROR,
              Finding.Treatment.REFUSED,
              LayerRole.BEDS,
              FeatureRef.layer("survey", ""),
              "no layer has a usable feature",
              "check that the right files and layers are given"));
    }
    return AnalysisGrid.utm(
        longitude.getAsDouble(), LayerPlace.medianLatitude(places).orElseThrow(), catalog);
  }

  private DepthField depth(
      List<LayerSource> depthGrids, List<Sounding> soundings, AnalysisGrid grid) {
    List<DepthField> fields = new ArrayList<>();
    for (LayerSource source : depthGrids) {
      fields.add(DepthGrid.read(source, grid, catalog, log));
    }
    if (!soundings.isEmpty()) {
      fields.add(new SoundedDepth(soundings));
    }
    if (fields.isEmpty()) {
      return DepthField.UNKNOWN;
    }
    return (x, y) -> firstKnown(fields, x, y);
  }

  private static OptionalDouble firstKnown(List<DepthField> fields, double x, double y) {
    for (DepthField field : fields) {
      OptionalDouble depth = field.depthMetres(x, y);
      if (depth.isPresent()) {
        return depth;
      }
    }
    return OptionalDouble.empty();
  }

  private final class Roles {
    private final LayerProjector projector;
    private final Map<CheckedLayer<?>, LayerPlace> places;

    Roles(LayerProjector projector, Map<CheckedLayer<?>, LayerPlace> places) {
      this.projector = projector;
      this.places = places;
    }

    <T extends Located> List<T> merge(
        LayerRole role, List<CheckedLayer<T>> layers, BiFunction<T, String, T> withId) {
      return merge(role, layers, withId, RowStore::held);
    }

    <T extends Located> List<T> merge(
        LayerRole role,
        List<CheckedLayer<T>> layers,
        BiFunction<T, String, T> withId,
        Supplier<RowStore.Rows<T>> newRows) {
      List<List<T>> projected = new ArrayList<>();
      for (CheckedLayer<T> layer : layers) {
        RowStore.Rows<T> rows = newRows.get();
        projector.project(layer, places.get(layer), rows);
        projected.add(rows.list());
      }
      return new LayerMerger<>(role, withId, log).merge(projected, newRows);
    }
  }

  private static Scar withId(Scar scar, String id) {
    return new Scar(
        id,
        scar.ref(),
        scar.geometry(),
        scar.cause(),
        scar.widthMetres(),
        scar.widthSource(),
        scar.date(),
        scar.excavationMetres(),
        scar.notes());
  }

  private static Bed withId(Bed bed, String id) {
    return new Bed(id, bed.ref(), bed.geometry(), bed.species(), bed.texture(), bed.notes());
  }

  private static Channel withId(Channel channel, String id) {
    return new Channel(id, channel.ref(), channel.geometry(), channel.name());
  }

  private static MapArea withId(MapArea area, String id) {
    return new MapArea(id, area.ref(), area.geometry(), area.name());
  }

  private static Sounding withId(Sounding sounding, String id) {
    return new Sounding(id, sounding.ref(), sounding.geometry(), sounding.depthMetres());
  }
}
