/** Times of the stages and of a whole assessment, on data made from a seed. */
package org.meadowmark.benchmarks;
