package org.meadowmark.core.reference;

/**
 * Animals that cross bare ground between patches alike.
 *
 * @param key short name used in files
 * @param label name for people
 * @param crossingDistanceMetres widest gap, edge to edge, that they are taken to cross
 * @param source where the row comes from
 */
public record FishGuild(String key, String label, double crossingDistanceMetres, String source) {}
