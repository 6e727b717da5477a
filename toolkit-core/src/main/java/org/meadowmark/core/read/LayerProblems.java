package org.meadowmark.core.read;

import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
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

  /** Problems of the same file once the layer is known. */
  public LayerProblems withLayer(String name) {
    return new LayerProblems(source, name);
  }

  /** A reference to a feature of the layer. */
  public FeatureRef ref(String featureId) {
    return new FeatureRef(source.fileLabel(), layer, featureId);
  }

  /** The layer cannot be read at all. */
  public SurveyInputException refused(String problem, String action) {
    return new SurveyInputException(refusal(problem, action));
  }

  /** The layer cannot be read at all, because of a failure below. */
  public SurveyInputException refused(String problem, String action, Throwable cause) {
    return new SurveyInputException(refusal(problem, action), cause);
  }

  /** The file stops or cannot be read on. */
  public SurveyInputException unreadable(Throwable cause) {
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

  /** A feature that cannot be read and is left out. */
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

  /** A remark that leaves the feature, or the layer if the id is empty, as it is. */
  public Finding remark(
      FindingCode code, Level level, String featureId, String problem, String action) {
    return new Finding(code, level, Treatment.KEPT, source.role(), ref(featureId), problem, action);
  }

  /** The message of a failure as one short line. */
  public static String detail(Throwable failure) {
    String message = failure.getMessage();
    return message == null ? failure.getClass().getSimpleName() : oneLine(message);
  }

  /** A text of unknown origin as one short line without control characters. */
  public static String oneLine(String text) {
    String line = text.replaceAll("[\\p{Cntrl}\\s]+", " ").strip();
    return line.length() <= LONGEST_DETAIL ? line : line.substring(0, LONGEST_DETAIL - 1) + "…";
  }
}
