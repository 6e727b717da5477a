/**
 * What the user asks for: the survey file (TOML), the layers it names, and the parameters, whose
 * defaults and limits come from the reference tables.
 */
package org.meadowmark.core.survey;
