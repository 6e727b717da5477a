package org.meadowmark.core.check;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.Scar;
import org.meadowmark.core.model.Scar.WidthSource;
import org.meadowmark.core.model.SiteNotes;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.survey.Field;
import org.meadowmark.core.survey.Parameters;

/** Scars: cause, width, date, depth of excavation and notes on the ground. */
final class ScarInterpreter implements FeatureInterpreter<Scar> {
  private final Parameters parameters;
  private final Map<String, ScarCause> causes;
  private long linesWithoutColumn;
  private long defaultsNarrowerThanPixel;
  private long scarsWithoutCauseColumn;

  ScarInterpreter(Parameters parameters, ReferenceTables tables) {
    this.parameters = parameters;
    this.causes = tables.causes();
  }

  @Override
  public GeometryCheck.Kind kind() {
    return GeometryCheck.Kind.LINES_OR_POLYGONS;
  }

  @Override
  public Field[] fields() {
    return new Field[] {
      Field.CAUSE,
      Field.WIDTH,
      Field.DATE,
      Field.EXCAVATION,
      Field.MUCK,
      Field.GRAZED,
      Field.SCARRED_AGAIN
    };
  }

  @Override
  public Optional<Scar> interpret(
      String id,
      FeatureRef ref,
      Geometry geometry,
      LayerAttributes attributes,
      Map<String, Object> values,
      FeatureRemarks remarks) {
    String cause = cause(attributes, values, remarks);
    Optional<LocalDate> date = date(attributes, values, remarks);
    OptionalDouble dug = excavation(attributes, values, remarks);
    SiteNotes notes = NotesReader.of(attributes, values, remarks);
    if (geometry.getDimension() == 2) {
      return Optional.of(
          new Scar(id, ref, geometry, cause, 0, WidthSource.OUTLINE, date, dug, notes));
    }
    OptionalDouble measured = measuredWidth(attributes, values, cause, remarks);
    if (measured.isPresent()) {
      questionWidth(measured.getAsDouble(), remarks);
      return Optional.of(
          new Scar(
              id,
              ref,
              geometry,
              cause,
              measured.getAsDouble(),
              WidthSource.MEASURED,
              date,
              dug,
              notes));
    }
    OptionalDouble usual = defaultWidth(cause);
    if (usual.isEmpty()) {
      remarks.skipped(
          FindingCode.WIDTH_MISSING,
          "a line without a width whose cause '" + cause + "' has no default width",
          "scar left out; give its width or draw its outline");
      return Optional.empty();
    }
    if (isNarrowerThanPixel(usual.getAsDouble())) {
      defaultsNarrowerThanPixel++;
    }
    return Optional.of(
        new Scar(
            id,
            ref,
            geometry,
            cause,
            usual.getAsDouble(),
            WidthSource.CAUSE_DEFAULT,
            date,
            dug,
            notes));
  }

  @Override
  public void finish(LayerAttributes attributes, FeatureRemarks layer) {
    if (scarsWithoutCauseColumn > 0) {
      layer.note(
          FindingCode.CAUSE_UNKNOWN,
          "no attribute gives the cause of " + scarsWithoutCauseColumn + " scar(s)",
          "their cause is 'unknown'; map an attribute to 'cause' if the layer has one");
    }
    if (linesWithoutColumn > 0) {
      layer.note(
          FindingCode.WIDTH_MISSING,
          "no attribute gives the width of " + linesWithoutColumn + " scar line(s)",
          "the default width of each cause is used; map an attribute to 'width' if the layer has"
              + " one");
    }
    if (defaultsNarrowerThanPixel > 0) {
      layer.note(
          FindingCode.NARROWER_THAN_PIXEL,
          defaultsNarrowerThanPixel
              + " scar line(s) with a default width narrower than a pixel of "
              + Figures.metres(parameters.pixelSizeMetres().orElseThrow()),
          "used; such scars may have been missed elsewhere");
    }
  }

  private String cause(
      LayerAttributes attributes, Map<String, Object> values, FeatureRemarks remarks) {
    if (!attributes.has(Field.CAUSE)) {
      scarsWithoutCauseColumn++;
      return ReferenceTables.UNKNOWN_CAUSE;
    }
    Optional<String> word = attributes.word(Field.CAUSE, values);
    if (word.isEmpty()) {
      remarks.note(FindingCode.CAUSE_UNKNOWN, "no cause given", "taken as 'unknown'");
      return ReferenceTables.UNKNOWN_CAUSE;
    }
    if (causes.containsKey(word.get()) || word.get().equals(ReferenceTables.UNKNOWN_CAUSE)) {
      return word.get();
    }
    remarks.kept(
        FindingCode.CAUSE_UNKNOWN,
        "unknown cause '" + attributes.text(Field.CAUSE, values).orElse("") + "'",
        "taken as 'unknown'; known causes: " + String.join(", ", causes.keySet()));
    return ReferenceTables.UNKNOWN_CAUSE;
  }

  private OptionalDouble measuredWidth(
      LayerAttributes attributes,
      Map<String, Object> values,
      String cause,
      FeatureRemarks remarks) {
    if (!attributes.has(Field.WIDTH)) {
      linesWithoutColumn++;
      return OptionalDouble.empty();
    }
    OptionalDouble width;
    try {
      width = attributes.metres(Field.WIDTH, values);
    } catch (NumberFormatException e) {
      replaced(
          FindingCode.VALUE_UNREADABLE,
          "width '" + attributes.text(Field.WIDTH, values).orElse("") + "' is not a number",
          cause,
          remarks);
      return OptionalDouble.empty();
    }
    if (width.isEmpty()) {
      defaultWidth(cause)
          .ifPresent(
              usual ->
                  remarks.note(
                      FindingCode.WIDTH_MISSING,
                      "no width given",
                      "default of '" + cause + "' used: " + Figures.metres(usual)));
    } else if (!(width.getAsDouble() > 0)) {
      replaced(
          FindingCode.WIDTH_OUT_OF_RANGE,
          "width " + Figures.metres(width.getAsDouble()) + " is not above 0",
          cause,
          remarks);
      return OptionalDouble.empty();
    }
    return width;
  }

  private void replaced(FindingCode code, String problem, String cause, FeatureRemarks remarks) {
    defaultWidth(cause)
        .ifPresent(
            usual ->
                remarks.repaired(
                    code, problem, "default of '" + cause + "' used: " + Figures.metres(usual)));
  }

  private void questionWidth(double width, FeatureRemarks remarks) {
    if (width < parameters.minimumWidthMetres() || width > parameters.maximumWidthMetres()) {
      remarks.kept(
          FindingCode.WIDTH_OUT_OF_RANGE,
          "width "
              + Figures.metres(width)
              + " is outside "
              + Figures.metres(parameters.minimumWidthMetres())
              + " to "
              + Figures.metres(parameters.maximumWidthMetres()),
          "used as it is; check the width and its unit");
    }
    if (isNarrowerThanPixel(width)) {
      remarks.note(
          FindingCode.NARROWER_THAN_PIXEL,
          "width "
              + Figures.metres(width)
              + " is less than a pixel of "
              + Figures.metres(parameters.pixelSizeMetres().orElseThrow()),
          "used; such scars may have been missed elsewhere");
    }
  }

  private boolean isNarrowerThanPixel(double width) {
    OptionalDouble pixel = parameters.pixelSizeMetres();
    return pixel.isPresent() && width < pixel.getAsDouble();
  }

  private Optional<LocalDate> date(
      LayerAttributes attributes, Map<String, Object> values, FeatureRemarks remarks) {
    try {
      return attributes.date(values);
    } catch (DateTimeException e) {
      remarks.kept(
          FindingCode.VALUE_UNREADABLE,
          "date '" + attributes.text(Field.DATE, values).orElse("") + "' cannot be understood",
          "scar used without a date; write dates as 2024-05-31");
      return Optional.empty();
    }
  }

  private static OptionalDouble excavation(
      LayerAttributes attributes, Map<String, Object> values, FeatureRemarks remarks) {
    String written = attributes.text(Field.EXCAVATION, values).orElse("");
    OptionalDouble metres;
    try {
      metres = attributes.metres(Field.EXCAVATION, values);
    } catch (NumberFormatException e) {
      remarks.kept(
          FindingCode.VALUE_UNREADABLE,
          "depth of excavation '" + written + "' is not a number",
          "scar used without it");
      return OptionalDouble.empty();
    }
    if (metres.isPresent() && metres.getAsDouble() < 0) {
      remarks.kept(
          FindingCode.VALUE_UNREADABLE,
          "depth of excavation '" + written + "' is below 0",
          "scar used without it; depths of a trench count downwards from the bottom around it");
      return OptionalDouble.empty();
    }
    return metres;
  }

  private OptionalDouble defaultWidth(String cause) {
    ScarCause row = causes.get(cause);
    return row == null ? OptionalDouble.empty() : row.defaultWidthMetres();
  }
}
