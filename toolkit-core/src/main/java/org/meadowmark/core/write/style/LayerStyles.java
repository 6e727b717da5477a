package org.meadowmark.core.write.style;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.meadowmark.core.plan.Fitness;
import org.meadowmark.core.rank.zone.MarkShape;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.Phrases;
import org.meadowmark.core.write.proposal.MapColours;

/**
 * The styles of the result layers: beds and areas by severity class, scars by cause, segments by
 * rank, marks by shape, repair sites by fitness, the other layers in one sign each.
 *
 * <p>Every severity class and cause of the reference tables has a rule, whether it occurs or not,
 * and keeps its colour from run to run.
 */
public final class LayerStyles {
  /** Folder of the styles. */
  public static final String FOLDER = "styles";

  private static final String BUNDLE = "org.meadowmark.core.write.style.styles";
  private static final String SEVERITY = "severity_class";
  private static final String UNKNOWN = "unknown";
  private static final int LEADING = 5;
  private static final int NEXT = 20;

  private static final String LEADING_INK = "#8A1C5B";
  private static final String NEXT_INK = "#5C6FB1";
  private static final String REST_INK = "#7F929C";
  private static final String PATCH = "#DCEBDD";
  private static final String PATCH_EDGE = "#14532D";
  private static final String PLANT = "#00543C";
  private static final String PROTECT = "#C24A00";
  private static final String NOT_FIT = "#6B5B73";

  private final ReferenceTables references;
  private final Set<String> causesFound;
  private final Phrases text = Phrases.english(BUNDLE);

  private LayerStyles(ReferenceTables references, Collection<String> causesFound) {
    this.references = references;
    this.causesFound = new TreeSet<>(causesFound);
  }

  /**
   * Writes a style {@code styles/LAYER.sld} for each layer with a geometry.
   *
   * @param folder where the folder of the styles goes; must exist
   * @param assessed results; the causes found and the reference tables decide on the rules
   * @throws IOException if a file exists or cannot be written
   */
  public static void write(Path folder, AssessedSurvey assessed) throws IOException {
    Path target = Files.createDirectory(folder.resolve(FOLDER));
    for (LayerStyle style : of(assessed)) {
      Files.writeString(
          target.resolve(style.layer() + ".sld"), SldDocument.of(style), StandardCharsets.UTF_8);
    }
  }

  /** The styles of a survey's layers, in the order of the layers. */
  static List<LayerStyle> of(AssessedSurvey assessed) {
    List<String> causes =
        assessed.measurement().scars().stream().map(scar -> scar.scar().cause()).toList();
    LayerStyles styles = new LayerStyles(assessed.references(), causes);
    return List.of(
        styles.beds(),
        styles.areas(),
        styles.scars(),
        styles.one("scarred_grass", new Symbol.Surface("#AB3240", 0.6, "#6F1900", 0.4)),
        styles.one("patches", new Symbol.Surface(PATCH, 0.5, PATCH_EDGE, 0.6)),
        styles.one(
            "gaps",
            new Symbol.Line(MapColours.WHITE, 3.4),
            new Symbol.Line(MapColours.INK, 1.6, 1, "3 2")),
        styles.segments(),
        styles.one(
            "zones",
            new Symbol.Line(MapColours.ZONE, 12, 0.55, ""),
            new Symbol.Line(MapColours.ZONE_LINE, 2.4)),
        styles.markers(),
        styles.repairSites(),
        styles.one("repair_units", new Symbol.Sign("circle", PLANT, MapColours.WHITE, 5, 0)));
  }

  private LayerStyle beds() {
    List<StyleRule> rules = new ArrayList<>();
    List<SeverityClass> classes = references.severityClasses();
    for (int place = 0; place < classes.size(); place++) {
      rules.add(
          StyleRule.of(
              classes.get(place).label(),
              new Condition.Equal(SEVERITY, classes.get(place).key()),
              new Symbol.Surface(
                  MapColours.bed(place, classes.size()), 1, MapColours.BED_EDGE, 0.8)));
    }
    rules.add(
        StyleRule.of(
            text.get("severity.unknown"),
            new Condition.Equal(SEVERITY, UNKNOWN),
            new Symbol.Surface(MapColours.BED_UNKNOWN, 1, MapColours.BED_EDGE, 0.8)));
    return new LayerStyle("beds", text.get("layer.beds"), rules);
  }

  private LayerStyle areas() {
    return one(
        "areas",
        new Symbol.Line(MapColours.WHITE, 3.2, 0.8, ""),
        new Symbol.Line(MapColours.SOFT_INK, 1.6, 1, "8 4"));
  }

  /** Scars are lines and surfaces: a line draws both, a surface of a line would be nonsense. */
  private LayerStyle scars() {
    List<StyleRule> rules = new ArrayList<>();
    int place = 0;
    for (String key : references.causes().keySet()) {
      rules.add(cause(key, references.causes().get(key).label(), place++));
    }
    for (String key : causesFound) {
      if (!references.causes().containsKey(key)) {
        rules.add(cause(key, key, place));
      }
    }
    return new LayerStyle("scars", text.get("layer.scars"), rules);
  }

  private static StyleRule cause(String key, String label, int place) {
    return StyleRule.of(
        label, new Condition.Equal("cause", key), new Symbol.Line(MapColours.scar(place), 1.8));
  }

  private LayerStyle segments() {
    return LayerStyle.of(
        "segments",
        text.get("layer.segments"),
        StyleRule.of(
            text.get("rank.leading", Integer.toString(LEADING)),
            new Condition.Between("rank", 1, LEADING),
            new Symbol.Line(LEADING_INK, 5)),
        StyleRule.of(
            text.get("rank.next", Integer.toString(LEADING + 1), Integer.toString(NEXT)),
            new Condition.Between("rank", LEADING + 1, NEXT),
            new Symbol.Line(NEXT_INK, 3.4)),
        StyleRule.of(
            text.get("rank.rest", Integer.toString(NEXT)),
            new Condition.Between("rank", NEXT + 1, Integer.MAX_VALUE),
            new Symbol.Line(REST_INK, 2)),
        StyleRule.of(
            text.get("rank.none"),
            new Condition.Otherwise(),
            new Symbol.Line(REST_INK, 1.2, 1, "4 4")));
  }

  private LayerStyle markers() {
    List<StyleRule> rules = new ArrayList<>();
    for (MarkShape shape : MarkShape.values()) {
      rules.add(
          new StyleRule(
              text.get("mark." + shape.key()),
              new Condition.Equal("shape", shape.key()),
              sign(shape)));
    }
    return new LayerStyle("zone_markers", text.get("layer.zone_markers"), rules);
  }

  private static List<Symbol> sign(MarkShape shape) {
    String orange = MapColours.MARK_ORANGE;
    String white = MapColours.WHITE;
    return switch (shape) {
      case DANGER_DIAMOND -> List.of(new Symbol.Sign("square", white, orange, 13, 45));
      case EXCLUSION_DIAMOND ->
          List.of(
              new Symbol.Sign("square", white, orange, 13, 45),
              new Symbol.Sign("cross", orange, orange, 9, 0));
      case RESTRICTION_CIRCLE -> List.of(new Symbol.Sign("circle", white, orange, 14, 0));
      case INFORMATION_RECTANGLE -> List.of(new Symbol.Sign("square", white, orange, 13, 0));
      case MOORING_BUOY -> List.of(new Symbol.Sign("circle", MapColours.MARK_BLUE, white, 14, 0));
      case CHANNEL_MARK ->
          List.of(new Symbol.Sign("triangle", MapColours.CHANNEL, MapColours.INK, 14, 0));
      case NONE -> List.of(new Symbol.Sign("x", MapColours.INK, MapColours.INK, 10, 0));
    };
  }

  private LayerStyle repairSites() {
    List<StyleRule> rules = new ArrayList<>();
    for (Fitness fitness : Fitness.values()) {
      Symbol.Line line =
          switch (fitness) {
            case PLANT -> new Symbol.Line(PLANT, 4);
            case PROTECT_FIRST -> new Symbol.Line(PROTECT, 3.2, 1, "7 3");
            case NOT_FIT -> new Symbol.Line(NOT_FIT, 2.2, 1, "2 3");
            case NO_GAIN -> new Symbol.Line(REST_INK, 1.4);
          };
      rules.add(
          StyleRule.of(
              text.get("fitness." + fitness.name()),
              new Condition.Equal("fitness", fitness.key()),
              line));
    }
    return new LayerStyle("repair_sites", text.get("layer.repair_sites"), rules);
  }

  private LayerStyle one(String layer, Symbol... symbols) {
    String title = text.get("layer." + layer);
    return LayerStyle.of(layer, title, StyleRule.of(title, new Condition.Always(), symbols));
  }
}
