/**
 * Connectivity of patches for animals that must cross gaps.
 *
 * <p>A {@link org.meadowmark.core.measure.connectivity.HabitatGraph} holds patches and gaps. {@link
 * org.meadowmark.core.measure.connectivity.BinaryConnectivity} takes gaps up to a width as crossed,
 * {@link org.meadowmark.core.measure.connectivity.ProbabilisticConnectivity} lets the chance of a
 * crossing fall with the width. Both give an index for the whole graph and the importance of each
 * patch; the second also gives what filling a gap would restore.
 *
 * <p>All classes are immutable and safe for any number of threads; results are the same whatever
 * the number of threads.
 */
package org.meadowmark.core.measure.connectivity;
