/**
 * What changed between surveys of the same place: scars matched from one to the next, their
 * histories, and the change of the beds themselves.
 *
 * <p>All surveys lie on one metric grid. A place that one of two surveys did not look at is not
 * comparable: nothing is said about it, least of all that it has no scar.
 */
package org.meadowmark.core.change;
