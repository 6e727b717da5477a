/** Layers as GeoParquet: read, written, and turned into the rows that travel between machines. */
package org.meadowmark.cluster.geoparquet;
