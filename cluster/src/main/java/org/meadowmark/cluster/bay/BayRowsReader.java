package org.meadowmark.cluster.bay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.meadowmark.cluster.geoparquet.FeatureRow;
import org.meadowmark.cluster.geoparquet.RowBytes;
import org.meadowmark.cluster.geoparquet.Value;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.read.FeatureSink;
import org.meadowmark.core.read.LayerHeader;
import org.meadowmark.core.read.LayerProblems;
import org.meadowmark.core.read.LayerReader;
import org.meadowmark.core.read.SourceFeature;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.write.record.FileDigest;

/**
 * Reads the layers of one bay from the rows that came to this machine.
 *
 * <p>Rows come in any order. They are read in the order of the layer they were converted from;
 * where that is not known by id, and where there is none by their bytes, so that the same rows
 * always give the same survey.
 */
final class BayRowsReader implements LayerReader {
  private record Encoded(FeatureRow row, byte[] bytes) {}

  private static final Comparator<Encoded> ORDER =
      Comparator.<Encoded>comparingLong(each -> each.row.order())
          .thenComparing(each -> each.row.id(), Ids.ORDER)
          .thenComparing(Encoded::bytes, Arrays::compareUnsigned);

  private final List<LayerSource> sources;
  private final List<LayerHead> heads;
  private final List<List<byte[]>> rows;
  private final String bay;
  private final TreeMap<Integer, FileDigest> digests = new TreeMap<>();

  /**
   * A reader.
   *
   * @param sources the layers of the survey
   * @param heads what the files say about each
   * @param rows rows of each
   * @param bay name of the bay
   */
  BayRowsReader(
      List<LayerSource> sources, List<LayerHead> heads, List<List<byte[]>> rows, String bay) {
    this.sources = sources;
    this.heads = heads;
    this.rows = rows;
    this.bay = bay;
  }

  /** Digests of the rows that were read, layers in the order of the survey. */
  List<FileDigest> digests() {
    return List.copyOf(digests.values());
  }

  @Override
  public void read(LayerSource source, FeatureSink sink) {
    int place = sources.indexOf(source);
    LayerHead head = heads.get(place);
    List<byte[]> encoded = rows.get(place);
    LayerProblems problems = new LayerProblems(source, head.name());
    sink.header(new LayerHeader(head.name(), head.attributes(), head.crsText(), encoded.size()));
    if (!head.leftOut().isEmpty()) {
      sink.finding(
          problems.remark(
              FindingCode.VALUE_UNREADABLE,
              Finding.Level.NOTE,
              "",
              "columns of a kind that no attribute is of: " + String.join(", ", head.leftOut()),
              "left out"));
    }
    List<Encoded> inOrder = new ArrayList<>(encoded.size());
    encoded.forEach(
        bytes -> inOrder.add(new Encoded(RowBytes.read(FeatureRow.class, bytes), bytes)));
    inOrder.sort(ORDER);
    RowsDigest digest = RowsDigest.begin(head);
    inOrder.forEach(each -> digest.add(each.bytes));
    digests.put(
        place, digest.of(source.fileLabel(), head.ofBays() ? "rows of " + bay : "all rows"));
    long number = 0;
    for (Encoded each : inOrder) {
      number++;
      FeatureRow row = each.row;
      String id = row.id().isEmpty() ? Long.toString(number) : row.id();
      if (row.problem().isEmpty()) {
        sink.feature(new SourceFeature(problems.ref(id), row.geometry(), attributes(row, head)));
      } else {
        sink.finding(
            problems.skipped(
                id,
                FindingCode.UNREADABLE_FEATURE,
                "its geometry cannot be read (" + row.problem() + ")"));
      }
    }
  }

  private static Map<String, Object> attributes(FeatureRow row, LayerHead head) {
    Map<String, Object> values = new HashMap<>();
    for (Value value : row.values()) {
      values.put(head.attributes().get(value.column()), value.object());
    }
    return values;
  }
}
