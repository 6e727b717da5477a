package org.meadowmark.core.assessment.comparison;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.change.effect.MarkedSegment;
import org.meadowmark.core.model.CrsText;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.MeadowmarkException;
import org.meadowmark.core.model.SurveyInputException;
import org.meadowmark.core.project.PointProjector;
import org.meadowmark.core.rank.SegmentScars;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.read.csv.CsvLayerReader;
import org.meadowmark.core.survey.LayerSource;

/**
 * Reads which channel segments were marked, and when, from a CSV file: a column {@code segment}
 * with segment ids or a position, a column {@code date}, and {@code device} where there is one. A
 * row that cannot be used is a finding.
 */
public final class MarkerReader {
  private static final String SEGMENT = "segment";
  private static final String DATE = "date";
  private static final String DEVICE = "device";

  private final MarkerFile file;
  private final SegmentScars segments;
  private final String gridLabel;
  private final double reachMetres;
  private final List<Finding> findings = new ArrayList<>();
  private final Map<String, MarkedSegment> marks = new LinkedHashMap<>();
  private Optional<LayerHeader> header = Optional.empty();
  private Optional<PointProjector> projector = Optional.empty();

  /**
   * A file of markers.
   *
   * @param path where it is
   * @param crs reference system of positions, {@code EPSG:n}, where given
   */
  public record MarkerFile(Path path, Optional<String> crs) {}

  /**
   * What was read.
   *
   * @param marks at most one a segment: the earliest
   * @param findings rows that were not used, or not as they are
   */
  public record Markers(List<MarkedSegment> marks, List<Finding> findings) {
    /**
     * Keeps copies of the lists.
     *
     * @param marks at most one a segment: the earliest
     * @param findings rows that were not used, or not as they are
     * @throws NullPointerException if a list or an entry of it is null
     */
    public Markers {
      marks = List.copyOf(marks);
      findings = List.copyOf(findings);
    }
  }

  /**
   * Prepares to read.
   *
   * @param file the file of markers
   * @param segments segments that can be marked
   * @param gridLabel analysis grid that they lie on
   * @param reachMetres largest distance from a position to its segment
   */
  public MarkerReader(
      MarkerFile file, SegmentScars segments, String gridLabel, double reachMetres) {
    this.file = file;
    this.segments = segments;
    this.gridLabel = gridLabel;
    this.reachMetres = reachMetres;
  }

  /**
   * Reads the file.
   *
   * @return the markers, with what was wrong in the file
   * @throws MeadowmarkException if it cannot be read as a whole, or has no column of dates or none
   *     that says where a marker stands
   */
  public Markers read() {
    if (!Files.isRegularFile(file.path())) {
      throw new MeadowmarkException(
          file.path() + ": there is no such file; give a CSV file of markers");
    }
    LayerSource source = LayerSource.of(LayerRole.CHANNELS, file.path());
    new CsvLayerReader(false)
        .read(
            source,
            new FeatureSink() {
              @Override
              public void header(LayerHeader read) {
                header = Optional.of(read);
                checkColumns(read);
              }

              @Override
              public void feature(SourceFeature feature) {
                take(feature);
              }

              @Override
              public void finding(Finding finding) {
                findings.add(finding);
              }
            });
    return new Markers(
        List.copyOf(marks.values()), findings.stream().sorted(Finding.ORDER).toList());
  }

  private void checkColumns(LayerHeader read) {
    if (name(read, DATE).isEmpty()) {
      throw new MeadowmarkException(
          file.path() + ": has no column 'date'; add the day from which each marker stood");
    }
  }

  private static Optional<String> name(LayerHeader header, String wanted) {
    return header.attributeNames().stream().filter(wanted::equalsIgnoreCase).findFirst();
  }

  private Optional<Object> value(SourceFeature row, String column) {
    return name(header.orElseThrow(), column).map(row.attributes()::get);
  }

  private void take(SourceFeature row) {
    Optional<Object> date = value(row, DATE);
    if (!(date.orElse(null) instanceof LocalDate placed)) {
      skip(
          row,
          FindingCode.VALUE_UNREADABLE,
          date.map(text -> "'" + text + "' is no date").orElse("has no date"),
          "write the day from which the marker stood like 2026-06-14");
      return;
    }
    Optional<String> segment = segment(row);
    if (segment.isEmpty()) {
      return;
    }
    String device = value(row, DEVICE).map(Object::toString).orElse("").strip();
    MarkedSegment mark = new MarkedSegment(segment.get(), placed, device);
    MarkedSegment before = marks.putIfAbsent(segment.get(), mark);
    if (before != null) {
      if (placed.isBefore(before.placed())) {
        marks.put(segment.get(), mark);
      }
      add(
          row,
          Finding.Treatment.SKIPPED,
          FindingCode.DUPLICATE_ID,
          "segment " + segment.get() + " is marked by more than one row",
          "the earliest day counts");
    }
  }

  private Optional<String> segment(SourceFeature row) {
    Optional<String> id = value(row, SEGMENT).map(Object::toString).map(String::strip);
    if (id.isPresent() && !id.get().isEmpty()) {
      if (segments.position(id.get()) < 0) {
        skip(
            row,
            FindingCode.MARKER_UNPLACED,
            "there is no segment '" + id.get() + "'",
            "take ids from the table segments of an assessment of the last survey");
        return Optional.empty();
      }
      return id;
    }
    Optional<Geometry> place = row.geometry().filter(MarkerReader::isSomewhere);
    if (place.isEmpty()) {
      skip(
          row,
          FindingCode.MARKER_UNPLACED,
          "has neither a segment nor a position",
          "give a segment, or columns x and y or wkt");
      return Optional.empty();
    }
    return nearest(row, place.get());
  }

  private static boolean isSomewhere(Geometry place) {
    return !place.isEmpty()
        && Double.isFinite(place.getCoordinate().x)
        && Double.isFinite(place.getCoordinate().y);
  }

  private Optional<String> nearest(SourceFeature row, Geometry place) {
    Optional<PointProjector> known = projector(row);
    if (known.isEmpty()) {
      return Optional.empty();
    }
    Optional<Geometry> point = known.get().project(place);
    int position = point.map(one -> segments.nearest(one.getCoordinate(), reachMetres)).orElse(-1);
    if (position < 0) {
      skip(
          row,
          FindingCode.MARKER_UNPLACED,
          "no channel segment lies within " + Math.round(reachMetres) + " m over water",
          "check the position and its reference system, or give the segment");
      return Optional.empty();
    }
    return Optional.of(segments.segments().get(position).id());
  }

  private Optional<PointProjector> projector(SourceFeature row) {
    if (projector.isPresent()) {
      return projector;
    }
    Optional<CrsText> crs = file.crs().map(CrsText::ofCode).or(() -> header.orElseThrow().crs());
    if (crs.isEmpty()) {
      skip(
          row,
          FindingCode.CRS_MISSING,
          "the reference system of the position is not known",
          "give it with --markers-crs, such as EPSG:4326");
      return Optional.empty();
    }
    try {
      projector = Optional.of(new PointProjector(crs.get(), gridLabel, row.ref()));
    } catch (SurveyInputException e) {
      throw new MeadowmarkException(e.getMessage(), e);
    }
    return projector;
  }

  private void skip(SourceFeature row, FindingCode code, String problem, String action) {
    add(row, Finding.Treatment.SKIPPED, code, problem, action);
  }

  private void add(
      SourceFeature row,
      Finding.Treatment treatment,
      FindingCode code,
      String problem,
      String action) {
    findings.add(
        new Finding(
            code,
            Finding.Level.WARNING,
            treatment,
            LayerRole.CHANNELS,
            new FeatureRef(row.ref().file(), row.ref().layer(), "line " + row.ref().featureId()),
            problem,
            action));
  }
}
