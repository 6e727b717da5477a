/**
 * Reads shapefiles: geometries from .shp by way of .shx, attributes from .dbf, the reference system
 * from .prj, the character set from .cpg.
 *
 * <p>Source: ESRI (1998), <i>ESRI Shapefile Technical Description</i>.
 */
package org.meadowmark.core.read.shapefile;
