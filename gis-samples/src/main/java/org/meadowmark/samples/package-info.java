/**
 * Invented surveys: a whole estuary from a seed, scars and channels on beds that exist already, and
 * survey folders written from either.
 *
 * <p>Everything is drawn from a seed. Each scar has its own stream of random numbers, keyed by the
 * seed and the scar's number, so that scars can be made in any order and on any number of threads
 * with the same result. Transcendental functions are those of {@link StrictMath}, so that results
 * do not differ between machines.
 */
package org.meadowmark.samples;
