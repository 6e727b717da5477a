package org.meadowmark.core.reference;

/**
 * A plant that forms beds.
 *
 * @param key short name used in files
 * @param scientificName binomial
 * @param commonName English name
 * @param source where the row comes from
 */
public record Species(String key, String scientificName, String commonName, String source) {}
