/** Reads GPX: tracks, routes and waypoints of a positioning device. */
package org.meadowmark.core.read.gpx;
