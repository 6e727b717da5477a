package org.meadowmark.core.measure.recovery;

import org.meadowmark.core.model.Range;

/**
 * How long a scar stays and what that costs.
 *
 * @param yearsToHalf years until half of it is covered
 * @param yearsToFull years until it is closed
 * @param lossServiceHectareYears discounted service-hectare-years lost inside beds
 */
public record Outlook(Range yearsToHalf, Range yearsToFull, Range lossServiceHectareYears) {}
