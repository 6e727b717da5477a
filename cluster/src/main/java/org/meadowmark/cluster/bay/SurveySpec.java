package org.meadowmark.cluster.bay;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.meadowmark.cluster.geoparquet.RowBytes;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ReferenceTablesReader;
import org.meadowmark.core.survey.LayerSource;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.survey.Setting;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.survey.SurveyDraft;
import org.meadowmark.core.write.record.FileDigest;

/**
 * What is assessed, in a form that can travel between machines: layers and the parameters that were
 * given. The rest of the parameters and the reference tables are those packed into the toolkit.
 */
public final class SurveySpec implements Serializable {
  private static final long serialVersionUID = 1L;

  private record Given(String name, ArrayList<String> values, String where)
      implements Serializable {}

  private final String name;
  private final LocalDate date;
  private final ArrayList<LayerSpec> layers = new ArrayList<>();
  private final ArrayList<Given> settings = new ArrayList<>();
  private final byte[] file;
  private transient volatile Parameters parameters;

  /**
   * The travelling form of a survey.
   *
   * @param draft settings as they were given
   * @param definition the survey made from it
   * @param file digest of the survey file
   */
  public SurveySpec(SurveyDraft draft, SurveyDefinition definition, FileDigest file) {
    this.file = RowBytes.of(file, FileDigest.class);
    name = definition.name();
    date = definition.date().orElse(null);
    definition.layers().forEach(layer -> layers.add(LayerSpec.of(layer)));
    draft
        .settings()
        .forEach(s -> settings.add(new Given(s.name(), new ArrayList<>(s.values()), s.where())));
  }

  /** Name of the survey. */
  public String name() {
    return name;
  }

  /** Layers in the order of the survey. */
  List<LayerSource> layers() {
    return layers.stream().map(LayerSpec::source).toList();
  }

  /** The survey of one bay, under the names of both; that of the whole where all is one bay. */
  SurveyDefinition definition(String bay) {
    return new SurveyDefinition(
        bay.equals(name) ? name : name + ", " + bay,
        Optional.ofNullable(date),
        Optional.empty(),
        layers(),
        parameters());
  }

  /** Digest of the survey file. */
  FileDigest file() {
    return RowBytes.read(FileDigest.class, file);
  }

  /** The choices that change results. */
  public Parameters parameters() {
    Parameters known = parameters;
    if (known == null) {
      known =
          ParametersTable.bundled()
              .parameters(
                  settings.stream()
                      .map(s -> new Setting(s.name, List.copyOf(s.values), s.where))
                      .toList());
      parameters = known;
    }
    return known;
  }

  /** The reference tables packed into the toolkit. */
  public static ReferenceTables tables() {
    return Tables.BUNDLED;
  }

  private static final class Tables {
    static final ReferenceTables BUNDLED = ReferenceTablesReader.bundled();
  }
}
