package org.meadowmark.cluster.bay;

import org.apache.spark.sql.Encoder;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.StructType;

/** Rows between the stages: of which bay, what it is, its number, its size, its bytes. */
public final class Stage {
  /** The bay. */
  public static final String BAY = "bay";

  /** What the row is. */
  public static final String KIND = "kind";

  /** Number of the layer, part or table. */
  public static final String NUMBER = "number";

  /** Place of a row in its table, or scars of a part. */
  public static final String PLACE = "place";

  /** The content. */
  public static final String BYTES = "bytes";

  /** A feature of a layer. */
  public static final String FEATURE = "feature";

  /** What merging a bay takes. */
  static final String FACTS = "facts";

  /** A part to measure. */
  static final String PART = "part";

  /** What was measured in a part. */
  static final String EVIDENCE = "evidence";

  /** A row of a table of results. */
  public static final String RESULT = "result";

  /** Where the files of a bay lie until the output is complete. */
  public static final String FOLDER = "folder";

  /** An error in the input, in words. */
  static final String ERROR = "error";

  static final StructType SCHEMA =
      new StructType()
          .add(BAY, "string", false)
          .add(KIND, "string", false)
          .add(NUMBER, "int", false)
          .add(PLACE, "bigint", false)
          .add(BYTES, "binary", false);

  private Stage() {}

  /** How such rows travel. */
  public static Encoder<Row> encoder() {
    return Encoders.row(SCHEMA);
  }

  /** A row. */
  public static Row row(String bay, String kind, int number, long place, byte[] bytes) {
    return RowFactory.create(bay, kind, number, place, bytes);
  }
}
