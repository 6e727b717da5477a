package org.meadowmark.cluster.output;

import java.sql.Date;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.sedona_sql.UDT.GeometryUDT;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.meadowmark.cluster.bay.Stage;
import org.meadowmark.cluster.bay.TableRow;
import org.meadowmark.cluster.geoparquet.GeoParquetColumns;
import org.meadowmark.cluster.geoparquet.ProjJson;
import org.meadowmark.cluster.geoparquet.RowBytes;
import org.meadowmark.cluster.geoparquet.Value;
import org.meadowmark.core.project.AnalysisGrid;
import org.meadowmark.core.write.Column;
import org.meadowmark.core.write.ResultTable;
import org.meadowmark.core.write.ResultTable.GeometryKind;

/**
 * Writes the tables of all bays: as GeoParquet where rows have a geometry, else as Parquet. The
 * rows of a bay are together in one file, in the order of the table.
 *
 * <p>A table with geometries is one file set; where bays have different analysis grids, one for
 * each grid, since a file set has one reference system.
 */
public final class TableFiles {
  private static final String ENDING = ".parquet";
  private static final int TABLES_AT_ONCE = 4;

  private final Dataset<Row> rows;
  private final Map<String, AnalysisGrid> gridOfBay;
  private final ClusterFolder folder;

  /**
   * Prepares.
   *
   * @param rows rows of all tables, see {@link Stage}
   * @param gridOfBay analysis grid of each bay
   * @param folder where to
   */
  public TableFiles(Dataset<Row> rows, Map<String, AnalysisGrid> gridOfBay, ClusterFolder folder) {
    this.rows = rows;
    this.gridOfBay = gridOfBay;
    this.folder = folder;
  }

  /** Writes every table, some at a time: most are small, and preparing a job takes longest. */
  public void write(List<ResultTable> layouts) {
    ExecutorService threads = Executors.newFixedThreadPool(TABLES_AT_ONCE);
    try {
      List<Future<?>> tables = new ArrayList<>();
      for (int number = 0; number < layouts.size(); number++) {
        ResultTable layout = layouts.get(number);
        Dataset<Row> own = rowsOf(rows, number);
        tables.add(threads.submit(() -> write(own, layout)));
      }
      for (Future<?> table : tables) {
        table.get();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while tables were written", e);
    } catch (ExecutionException e) {
      throw e.getCause() instanceof RuntimeException failure
          ? failure
          : new IllegalStateException(e.getCause());
    } finally {
      threads.shutdownNow();
    }
  }

  private void write(Dataset<Row> own, ResultTable layout) {
    if (layout.geometryKind() == GeometryKind.NONE) {
      decoded(own, layout).write().parquet(folder.inside(layout.name() + ENDING));
    } else {
      writeByGrid(own, layout);
    }
  }

  /** Rows of one table. */
  static Dataset<Row> rowsOf(Dataset<Row> rows, int number) {
    return rows.filter(
        functions
            .col(Stage.KIND)
            .equalTo(Stage.RESULT)
            .and(functions.col(Stage.NUMBER).equalTo(number)));
  }

  private void writeByGrid(Dataset<Row> own, ResultTable layout) {
    TreeMap<String, AnalysisGrid> grids = new TreeMap<>();
    gridOfBay.values().forEach(grid -> grids.put(grid.label(), grid));
    for (AnalysisGrid grid : grids.values()) {
      String code = grid.label().matches("[A-Z]+:[0-9]+") ? grid.label() : "";
      Object[] bays =
          gridOfBay.entrySet().stream()
              .filter(bay -> bay.getValue().label().equals(grid.label()))
              .map(Map.Entry::getKey)
              .toArray();
      String name =
          grids.size() == 1
              ? layout.name()
              : layout.name() + "." + grid.label().replaceAll("[^A-Za-z0-9]+", "-");
      Dataset<Row> onGrid =
          grids.size() == 1 ? own : own.filter(functions.col(Stage.BAY).isin(bays));
      decoded(onGrid, layout)
          .write()
          .format("geoparquet")
          .option("geoparquet.crs", ProjJson.of(grid.crs(), code))
          .save(folder.inside(name + ENDING));
    }
  }

  private static Dataset<Row> decoded(Dataset<Row> own, ResultTable layout) {
    StructType schema = schema(layout);
    int columns = layout.columns().size();
    boolean placed = layout.geometryKind() != GeometryKind.NONE;
    // The rows of a bay leave its merger in order, and nothing here moves them.
    return own.map(
        (MapFunction<Row, Row>)
            row -> {
              TableRow cells = RowBytes.read(TableRow.class, row.getAs(Stage.BYTES));
              Object[] values = new Object[1 + columns + (placed ? 1 : 0)];
              values[0] = row.getString(0);
              for (Value value : cells.values()) {
                values[1 + value.column()] =
                    value.kind() == Value.Kind.DATE
                        ? Date.valueOf((LocalDate) value.object())
                        : value.object();
              }
              if (placed) {
                values[1 + columns] = cells.geometry().orElse(null);
              }
              return RowFactory.create(values);
            },
        Encoders.row(schema));
  }

  private static StructType schema(ResultTable layout) {
    StructType schema = new StructType().add(Stage.BAY, DataTypes.StringType, false);
    for (Column column : layout.columns()) {
      schema = schema.add(column.name(), type(column.type()), true);
    }
    return layout.geometryKind() == GeometryKind.NONE
        ? schema
        : schema.add(GeoParquetColumns.GEOMETRY, new GeometryUDT(), true);
  }

  private static DataType type(Column.Type type) {
    return switch (type) {
      case TEXT -> DataTypes.StringType;
      case INTEGER -> DataTypes.LongType;
      case REAL -> DataTypes.DoubleType;
      case DATE -> DataTypes.DateType;
      case BOOLEAN -> DataTypes.BooleanType;
    };
  }
}
