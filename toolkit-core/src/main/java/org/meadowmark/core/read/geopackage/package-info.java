/** Reads GeoPackage (OGC 12-128): SQLite files with geometries in extended well-known binary. */
package org.meadowmark.core.read.geopackage;
