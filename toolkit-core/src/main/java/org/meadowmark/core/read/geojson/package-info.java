/** Reads GeoJSON: RFC 7946, and the form that preceded it, with its {@code crs} member. */
package org.meadowmark.core.read.geojson;
