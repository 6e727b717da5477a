/** The loss of a survey worked year by year, for a reader who wants to follow every line. */
package org.meadowmark.core.write.loss;
