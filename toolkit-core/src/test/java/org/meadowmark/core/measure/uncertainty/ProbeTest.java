package org.meadowmark.core.measure.uncertainty;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.meadowmark.core.measure.uncertainty.DrawnArea.Errors;

class ProbeTest {
  static double mean(double[] a) {
    return Arrays.stream(a).average().orElseThrow();
  }

  static double sd(double[] a) {
    double m = mean(a);
    return Math.sqrt(Arrays.stream(a).map(v -> (v - m) * (v - m)).sum() / (a.length - 1));
  }

  static double q(double[] a, double p) {
    double[] s = a.clone();
    Arrays.sort(s);
    double h = (s.length - 1) * p;
    int k = (int) h;
    return k + 1 < s.length ? s[k] + (h - k) * (s[k + 1] - s[k]) : s[k];
  }

  void go(String name, RandomSurvey survey, Optional<PositionalAccuracy> pos) {
    ErrorModel model = new ErrorModel(200, 7, pos);
    double measured = BruteForce.measured(survey.scars(), survey.grass());
    DrawnArea d = new DamageSimulator(survey.scars(), model).draw(survey.grass(), 1, measured);
    StringBuilder out =
        new StringBuilder(
            String.format("%-28s n=%d m=%.2f ", name, survey.scars().size(), measured));
    for (Errors e : Errors.values()) {
      double[] b =
          BruteForce.areas(
              survey.scars(),
              survey.grass(),
              model,
              e != Errors.POSITION,
              e != Errors.WIDTH && pos.isPresent());
      double[] f = new double[200];
      double rms = 0;
      for (int i = 0; i < 200; i++) {
        f[i] = d.area(e, i);
        rms += (f[i] - b[i]) * (f[i] - b[i]);
      }
      rms = Math.sqrt(rms / 200);
      out.append(
          String.format(
              " | %s sd %.3f/%.3f rms %.4f mean %.3f/%.3f q05 %.3f/%.3f q95 %.3f/%.3f",
              e, sd(f), sd(b), rms, mean(f), mean(b), q(f, .05), q(b, .05), q(f, .95), q(b, .95)));
    }
    System.out.println(out);
  }

  @Test
  void probe() {
    for (double rmse : new double[] {0, 0.5, 1, 3}) {
      Optional<PositionalAccuracy> pos =
          rmse == 0 ? Optional.empty() : Optional.of(PositionalAccuracy.ofRadialRmse(rmse));
      for (long seed = 1; seed <= 2; seed++) {
        go("winding5 r15 rmse" + rmse, RandomSurvey.winding(seed, 5, 15), pos);
        go("winding40 r30 rmse" + rmse, RandomSurvey.winding(seed, 40, 30), pos);
        go("winding150 r25 rmse" + rmse, RandomSurvey.winding(seed, 150, 25), pos);
        go("bundles r40 rmse" + rmse, RandomSurvey.bundles(seed, 3, 6, 30), pos);
        go("bundles r10 rmse" + rmse, RandomSurvey.bundles(seed, 3, 12, 10), pos);
      }
    }
  }
}
