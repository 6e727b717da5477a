package org.meadowmark.core.write.proposal;

/**
 * A finished map.
 *
 * @param svg the picture
 * @param height its height in units of the drawing
 * @param scarsDrawn scars that are drawn
 * @param scarsInView scars in the window, drawn or not
 */
record MapDrawing(String svg, double height, long scarsDrawn, long scarsInView) {}
