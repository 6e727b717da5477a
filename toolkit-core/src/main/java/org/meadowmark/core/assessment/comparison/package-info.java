/** A whole comparison of surveys, from files to an output folder. */
package org.meadowmark.core.assessment.comparison;
