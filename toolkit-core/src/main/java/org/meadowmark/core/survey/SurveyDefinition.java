package org.meadowmark.core.survey;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.PlainText;

/**
 * A survey as its file (and the command line) describes it.
 *
 * @param name name for reports; control characters become blanks, a very long one is cut
 * @param date date of the survey, where stated
 * @param file the survey file, where there is one
 * @param layers layers in the order of {@link LayerRole}; a role may have several
 * @param parameters choices that change results
 * @param facts how the survey was made, as far as stated
 */
public record SurveyDefinition(
    String name,
    Optional<LocalDate> date,
    Optional<Path> file,
    List<LayerSource> layers,
    Parameters parameters,
    SurveyFacts facts) {
  private static final int LONGEST_NAME = 200;

  /**
   * Makes the name fit to be shown, and keeps a copy of the layers.
   *
   * @param name name for reports; control characters become blanks, a very long one is cut
   * @param date date of the survey, where stated
   * @param file the survey file, where there is one
   * @param layers layers in the order of {@link LayerRole}; a role may have several
   * @param parameters choices that change results
   * @param facts how the survey was made, as far as stated
   * @throws NullPointerException if the name, the list of layers or one of them is null
   */
  public SurveyDefinition {
    name = PlainText.line(name, LONGEST_NAME).strip();
    layers = List.copyOf(layers);
  }

  /**
   * A survey of which nothing is stated about how it was made.
   *
   * @param name name for reports; control characters become blanks, a very long one is cut
   * @param date date of the survey, where stated
   * @param file the survey file, where there is one
   * @param layers layers in the order of {@link LayerRole}; a role may have several
   * @param parameters choices that change results
   * @throws NullPointerException if the name, the list of layers or one of them is null
   */
  public SurveyDefinition(
      String name,
      Optional<LocalDate> date,
      Optional<Path> file,
      List<LayerSource> layers,
      Parameters parameters) {
    this(name, date, file, layers, parameters, SurveyFacts.NONE);
  }

  /**
   * {@return the same survey with other choices}
   *
   * @param other the choices to have instead
   */
  public SurveyDefinition withParameters(Parameters other) {
    return new SurveyDefinition(name, date, file, layers, other, facts);
  }

  /**
   * {@return layers of one role}
   *
   * @param role what the layers stand for
   */
  public List<LayerSource> layers(LayerRole role) {
    return layers.stream().filter(layer -> layer.role() == role).toList();
  }
}
