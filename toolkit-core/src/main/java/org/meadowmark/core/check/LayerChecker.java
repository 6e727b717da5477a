package org.meadowmark.core.check;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.Bed;
import org.meadowmark.core.model.Channel;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.CrsText.AxisOrder;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.model.MapArea;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.SurveyInputException;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.store.RowStore;
import org.meadowmark.core.survey.Field;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.Parameters;

/**
 * Checks the features of one layer while they are read, and keeps the usable ones.
 *
 * <p>One object takes one layer: give it to a reader, then call {@link #checked}. Everything that
 * is skipped, repaired or doubtful goes to the {@link FindingLog}. An attribute that the survey
 * maps and the layer lacks is an error in the log; reading goes on as if it were not mapped, so
 * that one run lists everything. Not safe for use by several threads.
 *
 * @param <T> kind of feature
 */
public final class LayerChecker<T extends Located> implements FeatureSink {
  private final LayerSource source;
  private final FindingLog log;
  private final FeatureInterpreter<T> interpreter;
  private final GeometryCheck geometryCheck;

  private final Set<Field> fieldsRead;
  private final RowStore.Rows<T> usable;
  private final Set<String> ids = new HashSet<>();
  private final Map<String, Integer> lastSuffix = new HashMap<>();
  private LayerAttributes attributes;
  private CrsText crs;
  private FeatureRef layerRef;
  private long read;
  private long repaired;
  private long skipped;

  private LayerChecker(LayerSource source, FindingLog log, FeatureInterpreter<T> interpreter) {
    this(source, log, interpreter, RowStore.held());
  }

  private LayerChecker(
      LayerSource source,
      FindingLog log,
      FeatureInterpreter<T> interpreter,
      RowStore.Rows<T> usable) {
    this.usable = usable;
    this.source = source;
    this.log = log;
    this.interpreter = interpreter;
    this.geometryCheck = new GeometryCheck(interpreter.kind());
    this.fieldsRead = EnumSet.of(Field.ID, interpreter.fields());
  }

  /**
   * {@return a checker for a layer of scars: lines and polygons}
   *
   * @param source where the layer is
   * @param parameters limits of widths, and the pixel size
   * @param tables causes of scars
   * @param log takes the findings
   */
  public static LayerChecker<Scar> scars(
      LayerSource source, Parameters parameters, ReferenceTables tables, FindingLog log) {
    return new LayerChecker<>(source, log, new ScarInterpreter(parameters, tables));
  }

  /**
   * Makes a checker for a layer of scars that keeps the usable ones elsewhere.
   *
   * @param source where the layer is
   * @param parameters limits and units
   * @param tables causes of scars
   * @param log takes the findings
   * @param usable takes the usable scars
   * @return the checker
   */
  public static LayerChecker<Scar> scars(
      LayerSource source,
      Parameters parameters,
      ReferenceTables tables,
      FindingLog log,
      RowStore.Rows<Scar> usable) {
    return new LayerChecker<>(source, log, new ScarInterpreter(parameters, tables), usable);
  }

  /**
   * {@return a checker for a layer of beds: polygons}
   *
   * @param source where the layer is
   * @param tables species
   * @param log takes the findings
   */
  public static LayerChecker<Bed> beds(LayerSource source, ReferenceTables tables, FindingLog log) {
    return new LayerChecker<>(source, log, new BedInterpreter(tables));
  }

  /**
   * {@return a checker for a layer of channels: lines}
   *
   * @param source where the layer is
   * @param log takes the findings
   */
  public static LayerChecker<Channel> channels(LayerSource source, FindingLog log) {
    return new LayerChecker<>(
        source, log, new NamedInterpreter<>(GeometryCheck.Kind.LINES, Channel::new));
  }

  /**
   * {@return a checker for management areas, surveyed areas (polygons) or barriers (lines and
   * polygons), by the role of the source}
   *
   * @param source where the layer is, and its role
   * @param log takes the findings
   */
  public static LayerChecker<MapArea> areas(LayerSource source, FindingLog log) {
    GeometryCheck.Kind kind =
        source.role() == LayerRole.BARRIERS
            ? GeometryCheck.Kind.LINES_OR_POLYGONS
            : GeometryCheck.Kind.POLYGONS;
    return new LayerChecker<>(source, log, new NamedInterpreter<>(kind, MapArea::new));
  }

  /**
   * {@return a checker for points with a depth}
   *
   * @param source where the layer is; its width unit is the unit of depth
   * @param log takes the findings
   */
  public static LayerChecker<Sounding> soundings(LayerSource source, FindingLog log) {
    return new LayerChecker<>(source, log, new SoundingInterpreter());
  }

  /**
   * {@inheritDoc}
   *
   * @throws SurveyInputException if neither the survey nor the file says what reference system the
   *     layer is in
   */
  @Override
  public void header(LayerHeader header) {
    layerRef = FeatureRef.layer(source.fileLabel(), header.layer());
    crs = referenceSystem(header);
    attributes = new LayerAttributes(source, header);
    attributes
        .lacking()
        .forEach(
            (field, name) ->
                remark(
                    FindingCode.ATTRIBUTE_MISSING,
                    Level.ERROR,
                    Treatment.REFUSED,
                    "the layer has no attribute '" + name + "' for '" + field.key() + "'",
                    header.attributeNames().isEmpty()
                        ? "it has no attributes at all"
                        : "it has: " + String.join(", ", header.attributeNames())));
    noteUnusedMappings();
  }

  @Override
  public void feature(SourceFeature feature) {
    read++;
    String ownId = feature.ref().featureId();
    Optional<String> mappedId = attributes.text(Field.ID, feature.attributes());
    String wanted = mappedId.orElse(ownId);
    String id = uniqueId(wanted);
    FeatureRef ref = new FeatureRef(layerRef.file(), layerRef.layer(), id);
    FeatureRemarks remarks = new FeatureRemarks(log, source.role(), ref);
    if (attributes.has(Field.ID) && mappedId.isEmpty()) {
      remarks.repaired(
          FindingCode.VALUE_UNREADABLE,
          "the feature has no id",
          "its place in the file is used: " + ownId);
    }
    if (!id.equals(wanted)) {
      remarks.repaired(
          FindingCode.DUPLICATE_ID,
          "id " + wanted + " is used more than once (here by feature " + ownId + " of the file)",
          "called " + id + " in the results");
    }
    remarkChangedTexts(feature, remarks);
    Optional<T> result = interpret(feature, ref, remarks);
    if (result.isEmpty()) {
      skipped++;
      return;
    }
    usable.add(result.get());
    if (remarks.isRepaired()) {
      repaired++;
    }
  }

  /** Takes a reader's finding. One that skips a feature counts that feature as read. */
  @Override
  public void finding(Finding finding) {
    if (finding.treatment() == Treatment.SKIPPED && !finding.where().featureId().isEmpty()) {
      read++;
      skipped++;
    }
    log.add(finding);
  }

  /**
   * {@return the usable features; call once, after reading}
   *
   * @throws IllegalStateException if no header was read
   */
  public CheckedLayer<T> checked() {
    if (attributes == null) {
      throw new IllegalStateException("the layer was not read");
    }
    interpreter.finish(attributes, new FeatureRemarks(log, source.role(), layerRef));
    if (usable.list().isEmpty()) {
      reportNoFeatures();
    }
    LayerCount count =
        new LayerCount(
            source.role(),
            layerRef.file(),
            layerRef.layer(),
            crs.label(),
            read,
            usable.list().size(),
            repaired,
            skipped);
    return new CheckedLayer<>(crs, usable.list(), count);
  }

  private void remarkChangedTexts(SourceFeature feature, FeatureRemarks remarks) {
    for (Field field : fieldsRead) {
      if (attributes.isChanged(field, feature.attributes())) {
        remarks.repaired(
            FindingCode.VALUE_UNREADABLE,
            "its "
                + field.key()
                + " holds control characters, or is longer than "
                + LayerAttributes.LONGEST_TEXT
                + " characters",
            "blanks put for them, and cut at that length");
      }
    }
  }

  private Optional<T> interpret(SourceFeature feature, FeatureRef ref, FeatureRemarks remarks) {
    Optional<Geometry> geometry = geometryCheck.check(feature.geometry(), remarks);
    return geometry.flatMap(
        g ->
            interpreter.interpret(
                ref.featureId(), ref, g, attributes, feature.attributes(), remarks));
  }

  private String uniqueId(String wanted) {
    if (ids.add(wanted)) {
      return wanted;
    }
    int n = lastSuffix.getOrDefault(wanted, 1);
    String id;
    do {
      n++;
      id = wanted + "-" + n;
    } while (!ids.add(id));
    lastSuffix.put(wanted, n);
    return id;
  }

  private CrsText referenceSystem(LayerHeader header) {
    Optional<CrsText> given = source.crs().map(CrsText::ofCode);
    Optional<CrsText> stated = header.crs();
    if (given.isPresent() && stated.isPresent()) {
      String statedLabel = stated.get().label();
      if (!statedLabel.equalsIgnoreCase(given.get().label())) {
        remark(
            FindingCode.CRS_MISMATCH,
            Level.NOTE,
            Treatment.KEPT,
            "the file says " + statedLabel + ", the survey says " + given.get().label(),
            "the survey's choice is used");
      }
    }
    CrsText chosen =
        given
            .or(() -> stated)
            .orElseThrow(
                () ->
                    new SurveyInputException(
                        new Finding(
                            FindingCode.CRS_MISSING,
                            Level.ERROR,
                            Treatment.REFUSED,
                            source.role(),
                            layerRef,
                            "the file does not say what coordinate reference system it is in",
                            "state it with crs = \"EPSG:n\" for the layer in the survey file or"
                                + " --crs "
                                + source.role().key()
                                + "=EPSG:n")));
    return source.axisOrder() == AxisOrder.AS_DEFINED
        ? chosen.withAxisOrder(AxisOrder.AS_DEFINED)
        : chosen;
  }

  private void noteUnusedMappings() {
    for (Map.Entry<Field, String> mapping : source.attributes().entrySet()) {
      if (!fieldsRead.contains(mapping.getKey())) {
        remark(
            FindingCode.ATTRIBUTE_MISSING,
            Level.NOTE,
            Treatment.KEPT,
            "a layer of "
                + source.role().key()
                + " has no use for '"
                + mapping.getKey().key()
                + "'",
            "the mapping to '" + mapping.getValue() + "' is ignored");
      }
    }
  }

  private void reportNoFeatures() {
    boolean needed = read > 0 || source.role() == LayerRole.BEDS;
    remark(
        FindingCode.NO_FEATURES,
        needed ? Level.ERROR : Level.WARNING,
        needed ? Treatment.REFUSED : Treatment.KEPT,
        read == 0
            ? "the layer has no features"
            : "none of the " + read + " features of the layer can be used",
        needed
            ? "check that the right file and layer are given for " + source.role().key()
            : "taken as a layer with nothing in it");
  }

  private void remark(
      FindingCode code, Level level, Treatment treatment, String problem, String action) {
    log.add(new Finding(code, level, treatment, source.role(), layerRef, problem, action));
  }
}
