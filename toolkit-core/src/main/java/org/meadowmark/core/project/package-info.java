/**
 * Third stage: looks up reference systems, chooses the analysis grid, and projects the checked
 * layers to it.
 *
 * <p>{@link org.meadowmark.core.project.SurveyProjector} is the way in. Nothing is corrected by
 * guessing: a layer that cannot lie where it says, because latitude and longitude are swapped or
 * its reference system is wrong, is refused with the option that sets it right.
 */
package org.meadowmark.core.project;
