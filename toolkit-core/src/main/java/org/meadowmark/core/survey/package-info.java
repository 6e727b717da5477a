/**
 * What the user asks for: the survey file (TOML), the layers it names, and the parameters, whose
 * defaults and limits come from the reference tables.
 *
 * <p>A survey file becomes a {@link org.meadowmark.core.survey.SurveyDraft}; options are laid over
 * it; {@link org.meadowmark.core.survey.SurveyDraft#define define} checks the whole and gives the
 * {@link org.meadowmark.core.survey.SurveyDefinition} that the stages work on.
 */
package org.meadowmark.core.survey;
