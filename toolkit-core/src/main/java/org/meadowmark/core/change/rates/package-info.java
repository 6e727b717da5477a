/**
 * Rates of change between surveys, each with an interval and its method: new scars, healing against
 * the recovery model, scars cut again, pieces of grass and their connectivity.
 */
package org.meadowmark.core.change.rates;
