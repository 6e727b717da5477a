package org.meadowmark.core.survey;

import java.util.OptionalDouble;

/**
 * A row of {@code parameters.csv}.
 *
 * @param name name in a survey file
 * @param defaultText default as written in the table; empty for none
 * @param unit unit of the value, or empty
 * @param minimum lowest value allowed, where the value is a number
 * @param maximum highest value allowed, where the value is a number
 * @param description what it does, one phrase
 * @param source where default and limits come from
 */
public record ParameterRow(
    String name,
    String defaultText,
    String unit,
    OptionalDouble minimum,
    OptionalDouble maximum,
    String description,
    String source) {}
