/**
 * The assessment of many bays on Apache Spark, with Apache Sedona for GeoParquet and spatial SQL.
 *
 * <p>Everything that is measured is measured by the toolkit's core.
 */
package org.meadowmark.cluster;
