/**
 * The public interface of the toolkit for other programs: name a survey folder, assess it, read
 * figures.
 *
 * <p>Only this package and the exceptions {@link org.meadowmark.core.model.MeadowmarkException},
 * {@link org.meadowmark.core.model.SurveyInputException}, {@link
 * org.meadowmark.core.model.OutputExistsException} and {@link
 * org.meadowmark.core.model.OutputFailedException} are public interface. Every other package is
 * internal, whatever its classes allow: it may change in any release. Rules and an example are in
 * {@code docs/java-api.md}.
 */
package org.meadowmark.core.api;
