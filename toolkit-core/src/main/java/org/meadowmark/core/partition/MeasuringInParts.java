package org.meadowmark.core.partition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.meadowmark.core.measure.InteractionReach;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.measure.PartEvidence;
import org.meadowmark.core.measure.PartMeasurer;
import org.meadowmark.core.measure.PartMerger;
import org.meadowmark.core.measure.PartRules;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.store.RowStore;
import org.meadowmark.core.survey.Parameters;

/** Measures a survey part by part. */
public final class MeasuringInParts {
  private static final Progress QUIET = Progress.NONE;

  private final MetricSurvey survey;
  private final Parameters parameters;
  private final ReferenceTables tables;
  private final PartSize size;
  private final Progress progress;

  /**
   * Prepares.
   *
   * @param survey the survey; its scars may be kept on disk
   * @param parameters choices that change results
   * @param tables reference tables
   * @param size how large a part may be
   * @param progress hears how far the work is
   */
  public MeasuringInParts(
      MetricSurvey survey,
      Parameters parameters,
      ReferenceTables tables,
      PartSize size,
      Progress progress) {
    this.survey = survey;
    this.parameters = parameters;
    this.tables = tables;
    this.size = size;
    this.progress = progress;
  }

  /**
   * What was measured, and in what parts.
   *
   * @param measurement the same as of a run in one go; rows are read from the store
   * @param groups number of groups
   * @param largestGroupScars scars of the group that has most
   * @param parts the parts, in the order in which they were measured
   * @param tiled whether meadows were cut in tiles
   */
  public record Outcome(
      Measurement measurement,
      int groups,
      int largestGroupScars,
      List<PartFacts> parts,
      boolean tiled) {
    /**
     * Keeps a copy of the list of parts.
     *
     * @param measurement the same as of a run in one go; rows are read from the store
     * @param groups number of groups
     * @param largestGroupScars scars of the group that has most
     * @param parts the parts, in the order in which they were measured
     * @param tiled whether meadows were cut in tiles
     * @throws NullPointerException if the list or an entry of it is null
     */
    public Outcome {
      parts = List.copyOf(parts);
    }
  }

  /**
   * What was in a part.
   *
   * @param groups groups
   * @param beds beds
   * @param bedVertices vertices of the beds
   * @param scars scars
   * @param patches patches after scarring
   */
  public record PartFacts(int groups, int beds, long bedVertices, int scars, int patches) {}

  /**
   * Measures.
   *
   * @param store keeps rows; must stay open as long as the measurement is used
   * @return the measurement, and what parts it was made in
   */
  public Outcome measure(RowStore store) {
    progress.begin("Grouping beds and scars", -1);
    SurveyGroups groups =
        new SurveyGrouper(new InteractionReach(parameters, tables, survey.scale()))
            .group(survey.beds(), survey.scars());
    List<SurveyPart> parts = PartPacker.pack(groups, survey.beds(), survey.scars(), size);
    progress.end();

    progress.begin("Measuring parts", survey.scars().size());
    PartMerger merger =
        new PartMerger(
            survey.managementAreas(),
            survey.scale(),
            parameters,
            tables,
            survey.scars().size(),
            groups.tiled(),
            store);
    List<PartFacts> facts = new ArrayList<>();
    for (SurveyPart part : parts) {
      PartRules rules = merger.rules();
      PartEvidence evidence =
          new PartMeasurer(part.of(survey), parameters, tables, rules, QUIET).measure();
      merger.add(evidence);
      facts.add(
          new PartFacts(
              part.groups(),
              part.beds().length,
              Arrays.stream(part.beds())
                  .mapToLong(bed -> survey.beds().get(bed).geometry().getNumPoints())
                  .sum(),
              part.scars().length,
              evidence.patchCount()));
      progress.advance(part.scars().length);
    }
    progress.end();

    progress.begin("Putting parts together", -1);
    Measurement measurement = merger.merge();
    progress.end();
    int[] scarsOfGroup = new int[groups.count()];
    Arrays.stream(groups.groupOfScar()).forEach(group -> scarsOfGroup[group]++);
    return new Outcome(
        measurement,
        groups.count(),
        Arrays.stream(scarsOfGroup).max().orElse(0),
        facts,
        groups.tiled());
  }
}
