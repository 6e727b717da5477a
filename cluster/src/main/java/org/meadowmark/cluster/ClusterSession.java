package org.meadowmark.cluster;

import org.apache.sedona.spark.SedonaContext;
import org.apache.spark.sql.SparkSession;

/**
 * The session on the cluster, with Sedona's sources and functions.
 *
 * @param spark the session
 * @param isOwn whether it was opened here and ends here
 */
record ClusterSession(SparkSession spark, boolean isOwn) implements AutoCloseable {
  private static final String PARTITIONS = "spark.sql.shuffle.partitions";

  /**
   * Opens a session, or takes the one that is open in this process.
   *
   * @param name name of the run, for the cluster's own pages
   * @param master where Spark runs; empty takes what it was submitted with
   */
  static ClusterSession open(String name, String master) {
    // Sedona would tell its makers of every start.
    System.setProperty("SCARF_NO_ANALYTICS", "true");
    System.setProperty("DO_NOT_TRACK", "true");
    boolean own = SparkSession.getDefaultSession().isEmpty();
    SparkSession.Builder builder =
        SparkSession.builder()
            .appName("Meadowmark: " + name)
            .config("spark.sql.session.timeZone", "UTC");
    if (!master.isEmpty() && own) {
      builder = builder.master(master);
    }
    SparkSession spark = SedonaContext.create(builder.getOrCreate());
    if (own && !spark.sparkContext().getConf().contains(PARTITIONS)) {
      // Spark's own 200 would be mostly empty, and each table is written from all of them.
      spark.conf().set(PARTITIONS, 2L * spark.sparkContext().defaultParallelism());
    }
    return new ClusterSession(spark, own);
  }

  @Override
  public void close() {
    if (isOwn) {
      spark.stop();
    }
  }
}
