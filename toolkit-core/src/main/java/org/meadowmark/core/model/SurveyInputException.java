package org.meadowmark.core.model;

/** Input that cannot be used at all: one finding with treatment {@code REFUSED}. */
public class SurveyInputException extends MeadowmarkException {
  private static final long serialVersionUID = 1L;

  private final transient Finding finding;

  /**
   * Creates the exception.
   *
   * @param finding what is wrong
   */
  public SurveyInputException(Finding finding) {
    super(finding.message());
    this.finding = finding;
  }

  /**
   * Creates the exception.
   *
   * @param finding what is wrong
   * @param cause the failure below
   */
  public SurveyInputException(Finding finding, Throwable cause) {
    super(finding.message(), cause);
    this.finding = finding;
  }

  /** {@return what is wrong} */
  public Finding finding() {
    return finding;
  }
}
