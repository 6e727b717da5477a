package org.meadowmark.core.change;

import java.time.LocalDate;
import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Geometry;
import org.meadowmark.core.TestParameters;
import org.meadowmark.core.TestSurvey;
import org.meadowmark.core.change.match.ScarMatcher;
import org.meadowmark.core.change.match.SeasonMatch;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.survey.MatchingParameters;
import org.meadowmark.core.survey.PositionalAccuracy;

/** Two surveys built from well-known text, for tests. The combined accuracy is 1 m at first. */
public final class Seasons {
  public static final LocalDate EARLIER = LocalDate.of(2025, 6, 1);
  public static final LocalDate LATER = LocalDate.of(2026, 6, 1);
  public static final MatchingParameters PARAMETERS = TestParameters.of().matching();

  /** The error of each survey for which both together are within 1 m in 95 % of cases. */
  private static final double ONE_METRE_RMSE = 1 / 1.7308 / Math.sqrt(2);

  private final TestSurvey before = new TestSurvey();
  private final TestSurvey after = new TestSurvey();
  private double toleranceMetres = 1;

  public Seasons before(String id, String wkt) {
    before.scar(id, wkt, 0.4);
    return this;
  }

  public Seasons after(String id, String wkt) {
    after.scar(id, wkt, 0.4);
    return this;
  }

  public Seasons tolerance(double metres) {
    toleranceMetres = metres;
    return this;
  }

  public TestSurvey earlier() {
    return before;
  }

  public TestSurvey later() {
    return after;
  }

  /** Changes every geometry of both surveys. */
  public Seasons map(UnaryOperator<Geometry> change) {
    before.map(change);
    after.map(change);
    return this;
  }

  public SeasonSurvey earlierSurvey() {
    return new SeasonSurvey(EARLIER, before.build(), accuracy());
  }

  public SeasonSurvey laterSurvey() {
    return new SeasonSurvey(LATER, after.build(), accuracy());
  }

  public PositionalAccuracy accuracy() {
    return PositionalAccuracy.ofRadialRmse(ONE_METRE_RMSE * toleranceMetres);
  }

  public SeasonMatch match() {
    return new ScarMatcher(PARAMETERS).match(earlierSurvey(), laterSurvey(), Progress.NONE);
  }

  /** The later survey taken as the earlier one, and the reverse. */
  public SeasonMatch matchSwapped() {
    return new ScarMatcher(PARAMETERS)
        .match(
            new SeasonSurvey(EARLIER, after.build(), accuracy()),
            new SeasonSurvey(LATER, before.build(), accuracy()),
            Progress.NONE);
  }
}
