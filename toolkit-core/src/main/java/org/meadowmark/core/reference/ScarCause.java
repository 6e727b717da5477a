package org.meadowmark.core.reference;

import java.util.OptionalDouble;

/**
 * What cut a scar.
 *
 * @param key short name used in files
 * @param label name for people
 * @param defaultWidthMetres width of a line with no width of its own; empty where it must be mapped
 * @param widthVariation coefficient of variation of the width
 * @param source where the row comes from
 */
public record ScarCause(
    String key,
    String label,
    OptionalDouble defaultWidthMetres,
    double widthVariation,
    String source) {}
