/**
 * How the result layers are to be drawn, as OGC Styled Layer Descriptors that any GIS can load: one
 * file a layer, in the colours of the maps.
 */
package org.meadowmark.core.write.style;
