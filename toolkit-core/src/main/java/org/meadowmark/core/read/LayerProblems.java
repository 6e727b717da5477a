package org.meadowmark.core.read;

import java.nio.file.AccessDeniedException;
import java.util.Collection;
import java.util.Optional;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.PlainText;
import org.meadowmark.core.model.SurveyInputException;
import org.meadowmark.core.survey.LayerSource;

/**
 * Words the problems that readers meet in one layer: one line, with the file, the layer and what to
 * do.
 *
 * @param source the layer as the user named it
 * @param layer its name in the file, or empty while that is not known
 */
public record LayerProblems(LayerSource source, String layer) {

  private static final int LONGEST_DETAIL = 160;
  private static final int MOST_LOOKED_AT = 4_000;

  /**
   * {@return problems of a file whose format has no layers: the layer has the file's base name}
   *
   * @param source the layer as the user named it
   */
  public static LayerProblems ofFile(LayerSource source) {
    String name = source.file().toAbsolutePath().getFileName().toString();
    int dot = name.lastIndexOf('.');
    return new LayerProblems(source, dot <= 0 ? name : name.substring(0, dot));
  }

  /**
   * Refuses a layer that the user named and the file does not have.
   *
   * @param names names that the only layer of the file goes by
   */
  public void refuseOtherLayer(Collection<String> names) {
    Optional<String> wanted = source.layer();
    if (wanted.isPresent() && names.stream().noneMatch(wanted.get()::equalsIgnoreCase)) {
      throw refused(
          "has no layer '" + oneLine(wanted.get()) + "'",
          "name no layer, or one of: " + oneLine(String.join(", ", names)));
    }
  }

  /**
   * {@return problems of the same file once the layer is known}
   *
   * @param name name of the layer in the file
   */
  public LayerProblems withLayer(String name) {
    return new LayerProblems(source, name);
  }

  /**
   * {@return a reference to a feature of the layer}
   *
   * @param featureId the format's own id, or empty for the layer as a whole
   */
  public FeatureRef ref(String featureId) {
    return new FeatureRef(source.fileLabel(), layer, featureId);
  }

  /**
   * {@return the layer cannot be read at all}
   *
   * @param problem what is wrong, in words
   * @param action what the user is to do, in words
   */
  public SurveyInputException refused(String problem, String action) {
    return new SurveyInputException(refusal(problem, action));
  }

  /**
   * {@return the layer cannot be read at all, because of a failure below}
   *
   * @param problem what is wrong, in words
   * @param action what the user is to do, in words
   * @param cause the failure below
   */
  public SurveyInputException refused(String problem, String action, Throwable cause) {
    return new SurveyInputException(refusal(problem, action), cause);
  }

  /**
   * {@return the problem that the file stops or cannot be read on}
   *
   * @param cause the failure that stopped the reading
   */
  public SurveyInputException unreadable(Throwable cause) {
    if (cause instanceof AccessDeniedException) {
      return refused("may not be read", "change the permissions of the file", cause);
    }
    return refused(
        "cannot be read (" + detail(cause) + ")", "check permissions, or get a whole copy", cause);
  }

  private Finding refusal(String problem, String action) {
    return new Finding(
        FindingCode.UNREADABLE_FILE,
        Level.ERROR,
        Treatment.REFUSED,
        source.role(),
        ref(""),
        problem,
        action);
  }

  /**
   * {@return a feature that cannot be read and is left out}
   *
   * @param featureId the format's own id of the feature
   * @param code kind of problem
   * @param problem what is wrong, in words
   */
  public Finding skipped(String featureId, FindingCode code, String problem) {
    return new Finding(
        code,
        Level.WARNING,
        Treatment.SKIPPED,
        source.role(),
        ref(featureId),
        problem,
        "feature left out; correct it in the file");
  }

  /**
   * {@return a feature that could only be read after a change}
   *
   * @param featureId the format's own id of the feature
   * @param code kind of problem
   * @param problem what is wrong, in words
   * @param action what was changed, in words
   */
  public Finding repaired(String featureId, FindingCode code, String problem, String action) {
    return new Finding(
        code, Level.WARNING, Treatment.REPAIRED, source.role(), ref(featureId), problem, action);
  }

  /**
   * {@return a remark that leaves the feature, or the layer if the id is empty, as it is}
   *
   * @param code kind of problem
   * @param level how bad it is
   * @param featureId the format's own id of the feature, or empty for the layer
   * @param problem what is wrong or doubtful, in words
   * @param action what is done about it, in words
   */
  public Finding remark(
      FindingCode code, Level level, String featureId, String problem, String action) {
    return new Finding(code, level, Treatment.KEPT, source.role(), ref(featureId), problem, action);
  }

  /**
   * {@return the message of a failure as one short line}
   *
   * @param failure the failure; where it only wraps another, the message is that of the other
   */
  public static String detail(Throwable failure) {
    String message = failure.getMessage();
    Throwable cause = failure.getCause();
    if (cause != null && (message == null || message.equals(cause.toString()))) {
      return detail(cause);
    }
    return message == null ? failure.getClass().getSimpleName() : oneLine(message);
  }

  /**
   * {@return a text of unknown origin as one short line without control characters}
   *
   * @param text text out of a file or a library
   */
  public static String oneLine(String text) {
    // Cut first: what is looked through is then short, whatever the text.
    String start = text.length() <= MOST_LOOKED_AT ? text : text.substring(0, MOST_LOOKED_AT);
    String line = PlainText.line(start).replaceAll("\\s+", " ").strip();
    return PlainText.line(line, LONGEST_DETAIL);
  }
}
