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
    return new ClusterSession(SedonaContext.create(builder.getOrCreate()), own);
  }

  @Override
  public void close() {
    if (isOwn) {
      spark.stop();
    }
  }
}
