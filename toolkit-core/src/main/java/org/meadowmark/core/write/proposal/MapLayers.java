package org.meadowmark.core.write.proposal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.write.Foremost;

/**
 * The layers of a survey, ready to be asked for what is in a window. Making it takes n log n time
 * in features, a question log n and the features found. Safe for several threads.
 */
final class MapLayers {
  private final SheetSurvey survey;
  private final Optional<GridPlaces> places;
  private final STRtree beds;
  private final STRtree scars;
  private final STRtree barriers;
  private final STRtree channels;
  private final Envelope extent = new Envelope();
  private final Map<String, Integer> severityPlace = new LinkedHashMap<>();
  private final Map<String, Integer> causePlace = new LinkedHashMap<>();

  /** Scars in a window: those to draw, longest first, and how many there are. */
  record Scars(List<Scar> drawn, long inView) {}

  /** Where a scar is in the list of the survey; a million of them are not held for a few maps. */
  private record ScarPlace(int place, double lengthMetres, String id) {
    static final Comparator<ScarPlace> LONGEST_FIRST =
        Comparator.comparingDouble((ScarPlace scar) -> -scar.lengthMetres)
            .thenComparing(ScarPlace::id, Ids.ORDER);
  }

  MapLayers(SheetSurvey survey) {
    this.survey = survey;
    this.places = GridPlaces.of(survey.map().gridWkt());
    this.beds = index(survey.map().beds());
    this.scars = scarIndex(survey.map().scars());
    this.barriers = index(survey.map().barriers());
    this.channels = index(survey.map().channels());
    survey.map().beds().forEach(bed -> extent.expandToInclude(box(bed)));
    survey.map().channels().forEach(channel -> extent.expandToInclude(box(channel)));
    survey
        .references()
        .severityClasses()
        .forEach(c -> severityPlace.put(c.key(), places(severityPlace)));
    survey.references().causes().keySet().forEach(key -> causePlace.put(key, places(causePlace)));
  }

  SheetSurvey survey() {
    return survey;
  }

  /** Where the grid is on Earth, if it is known. */
  Optional<GridPlaces> gridPlaces() {
    return places;
  }

  /** Around beds and channels. */
  Envelope extent() {
    return new Envelope(extent);
  }

  List<Bed> beds(Envelope window) {
    return found(beds, window, Bed.class);
  }

  List<MapArea> barriers(Envelope window) {
    return found(barriers, window, MapArea.class);
  }

  List<Channel> channels(Envelope window) {
    return found(channels, window, Channel.class);
  }

  /**
   * Scars whose boxes meet a window.
   *
   * @param most how many to draw: the longest
   */
  Scars scars(Envelope window, int most) {
    List<ScarPlace> all = new ArrayList<>();
    scars.query(window, item -> all.add((ScarPlace) item));
    List<Scar> longest =
        Foremost.of(all, ScarPlace.LONGEST_FIRST, most).stream()
            .map(each -> survey.map().scars().get(each.place()))
            .toList();
    return new Scars(longest, all.size());
  }

  /** Place of a bed's severity among the classes; empty where it is not known. */
  Optional<Integer> severityPlace(String bedId) {
    return Optional.ofNullable(survey.severityByBed().get(bedId)).map(severityPlace::get);
  }

  int severityClasses() {
    return severityPlace.size();
  }

  /** Place of a cause among the causes; one more than the last where it is in no table. */
  int causePlace(String cause) {
    return causePlace.getOrDefault(cause, causePlace.size());
  }

  private static int places(Map<String, Integer> places) {
    return places.size();
  }

  private static Envelope box(Located feature) {
    return feature.geometry().getEnvelopeInternal();
  }

  private static STRtree index(List<? extends Located> features) {
    STRtree tree = new STRtree();
    features.forEach(feature -> tree.insert(box(feature), feature));
    tree.build();
    return tree;
  }

  private static STRtree scarIndex(List<Scar> scars) {
    STRtree tree = new STRtree();
    int place = 0;
    for (Scar scar : scars) {
      tree.insert(box(scar), new ScarPlace(place++, scar.geometry().getLength(), scar.id()));
    }
    tree.build();
    return tree;
  }

  private static <T extends Located> List<T> found(STRtree tree, Envelope window, Class<T> type) {
    List<T> features = new ArrayList<>();
    tree.query(window, item -> features.add(type.cast(item)));
    features.sort(Comparator.comparing(Located::id, Ids.ORDER));
    return features;
  }
}
