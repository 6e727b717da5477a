package org.meadowmark.samples;

import org.locationtech.jts.geom.LineString;

/**
 * A channel stretch beside which scars were made more frequent.
 *
 * @param id number in the list, from 1
 * @param channel name of the channel
 * @param stretch the stretch of its centreline
 * @param elevation how many times more frequent scars are there
 */
public record PlantedHotSpot(int id, String channel, LineString stretch, double elevation) {}
