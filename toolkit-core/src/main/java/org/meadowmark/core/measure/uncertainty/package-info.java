/**
 * How sure a scarred area is: seeded draws of scar widths and positions.
 *
 * <p>Works on scars and grass on the analysis grid and knows nothing of how they were measured; the
 * measuring classes hand the measured areas in and get drawn areas back.
 */
package org.meadowmark.core.measure.uncertainty;
