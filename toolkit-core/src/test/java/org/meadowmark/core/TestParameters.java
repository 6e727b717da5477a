package org.meadowmark.core;

import java.util.ArrayList;
import java.util.List;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.Setting;

/** Parameters for tests: the defaults but for what is named. */
public final class TestParameters {
  private static final ParametersTable TABLE = ParametersTable.bundled();

  private TestParameters() {}

  /**
   * Parameters.
   *
   * @param namesAndValues a name, its value, the next name, and so on
   */
  public static Parameters of(Object... namesAndValues) {
    List<Setting> settings = new ArrayList<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      settings.add(
          new Setting(
              namesAndValues[i].toString(), List.of(namesAndValues[i + 1].toString()), "test"));
    }
    return TABLE.parameters(settings);
  }
}
