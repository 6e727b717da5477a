package org.meadowmark.core.write.table;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.meadowmark.core.measure.Measurement;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.LayerCount;
import org.meadowmark.core.reference.ReferenceTables;
import org.meadowmark.core.reference.ScarCause;
import org.meadowmark.core.reference.SeverityClass;
import org.meadowmark.core.reference.Species;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.ParametersTable;
import org.meadowmark.core.write.AssessedSurvey;
import org.meadowmark.core.write.ResultTable;

/**
 * Makes the result tables of an assessed survey.
 *
 * <p>Rows come in id order (segments in rank order) whatever order the lists have, so that the same
 * results give the same bytes. Real numbers are rounded to six decimals. Sorting takes n log n time
 * in the rows; values are read while a table is written, so a table holds references only.
 */
public final class ResultTables {
  /** Stands for a cause key in the data dictionary. */
  private static final String ANY_CAUSE = "<cause>";

  /** Stands for the key of a severity class in the data dictionary. */
  private static final String ANY_CLASS = "<class>";

  private ResultTables() {}

  /**
   * {@return all tables, in the order of the data dictionary}
   *
   * @param assessed results
   * @throws IllegalStateException while a table is read, if a number is not finite
   */
  public static List<ResultTable> of(AssessedSurvey assessed) {
    ReferenceTables references = assessed.references();
    Parameters parameters = assessed.definition().parameters();
    List<String> classOrder = classOrder(references);
    List<String> causes = SegmentTable.causesPresent(assessed.ranking().segments(), references);
    List<ResultTable> ranked =
        List.of(
            SegmentTable.segments(causes, classOrder).table(assessed.ranking().segments()),
            ScarTables.scarShares().table(assessed.ranking().shares()),
            ZoneTables.zones().table(assessed.zones().zones()),
            ZoneTables.segments().table(ZoneTables.segmentRows(assessed.zones())),
            ZoneTables.markers().table(ZoneTables.markerRows(assessed.zones())),
            ZoneTables.devices().table(ZoneTables.deviceRows(assessed.zones())),
            ZoneTables.cover().table(assessed.zones().curve()),
            RecoveryTables.scars().table(assessed.recovery().scars()),
            RecoveryTables.beds().table(assessed.recovery().beds()),
            RecoveryTables.areas().table(assessed.recovery().areas()),
            RecoveryTables.years().table(RecoveryTables.yearRows(assessed.recovery())),
            RecoveryTables.spread()
                .table(
                    RecoveryTables.spreadRows(
                        references.rhizomeElongation(), parameters.recovery().newPatchesPerYear())),
            RepairTables.sites().table(RepairTables.siteRows(assessed.repairs())),
            RepairTables.units().table(assessed.repairs().units()),
            RepairTables.choice().table(assessed.repairs().choice().stream().toList()),
            RepairTables.curve().table(assessed.repairs().curve()),
            RepairTables.seasons().table(assessed.repairs().seasons()));
    return Stream.of(
            measured(assessed.measurement(), parameters, references),
            ranked,
            checks(assessed.counts(), assessed.findings()))
        .flatMap(List::stream)
        .toList();
  }

  /**
   * Makes the tables of what was measured, first in the order of all tables.
   *
   * @param measured measurement of a survey
   * @param parameters those of the survey
   * @param references reference tables that were used
   * @return one each, also where it has no row
   * @throws IllegalStateException while a table is read, if a number is not finite
   */
  public static List<ResultTable> measured(
      Measurement measured, Parameters parameters, ReferenceTables references) {
    List<String> classOrder = classOrder(references);
    return List.of(
        BedTables.beds(references.species(), classOrder).table(measured.beds()),
        AreaTables.areas(classOrder).table(measured.areas()),
        AreaTables.classes().table(AreaTables.classRows(measured.areas())),
        AreaTables.severity().table(AreaTables.severityRows(measured.areas(), classOrder)),
        ScarTables.scars(references.causes(), parameters).table(measured.scars()),
        ScarTables.scarsInBeds().table(measured.scarsInBeds()),
        BedTables.scarredGrass().table(measured.scarredGrass()),
        PatchTables.patches().table(measured.patches()),
        PatchTables.gaps(parameters).table(measured.gaps()),
        FragmentationTables.fragmentation().table(Scope.of(measured)),
        FragmentationTables.gapWidths().table(FragmentationTables.binRows(measured)),
        PatchTables.crossings().table(PatchTables.crossingRows(measured)),
        ConnectivityTables.patches().table(ConnectivityTables.patchRows(measured)),
        ConnectivityTables.fillings().table(ConnectivityTables.fillingRows(measured)));
  }

  /**
   * Makes the tables of what was read and found, last in the order of all tables.
   *
   * @param counts features by layer
   * @param findings everything that was found
   * @return layers, then findings
   */
  public static List<ResultTable> checks(List<LayerCount> counts, List<Finding> findings) {
    return List.of(CheckTables.layers().table(counts), CheckTables.findings().table(findings));
  }

  private static List<String> classOrder(ReferenceTables references) {
    return references.severityClasses().stream().map(SeverityClass::key).toList();
  }

  /**
   * Makes all tables without rows, for a store that many surveys with the same reference tables are
   * put into: columns that {@link #of} makes for the causes of one survey are here for every cause.
   *
   * @param parameters those of the surveys
   * @param references reference tables that they use
   * @return one each, in the order of {@link #of}; every column of a table there is in the one here
   */
  public static List<ResultTable> withoutRows(Parameters parameters, ReferenceTables references) {
    return layouts(
            references.species(),
            references.causes(),
            List.copyOf(references.causes().keySet()),
            classOrder(references),
            parameters)
        .<ResultTable>map(layout -> layout.table(List.of()))
        .toList();
  }

  /** The definitions of all tables, in the same order. */
  static Stream<TableLayout<?>> layouts() {
    return layouts(
        Map.of(),
        Map.of(),
        List.of(ANY_CAUSE),
        List.of(ANY_CLASS),
        ParametersTable.bundled().defaults());
  }

  private static Stream<TableLayout<?>> layouts(
      Map<String, Species> species,
      Map<String, ScarCause> causes,
      List<String> causeKeys,
      List<String> classes,
      Parameters parameters) {
    return Stream.of(
        BedTables.beds(species, classes),
        AreaTables.areas(classes),
        AreaTables.classes(),
        AreaTables.severity(),
        ScarTables.scars(causes, parameters),
        ScarTables.scarsInBeds(),
        BedTables.scarredGrass(),
        PatchTables.patches(),
        PatchTables.gaps(parameters),
        FragmentationTables.fragmentation(),
        FragmentationTables.gapWidths(),
        PatchTables.crossings(),
        ConnectivityTables.patches(),
        ConnectivityTables.fillings(),
        SegmentTable.segments(causeKeys, classes),
        ScarTables.scarShares(),
        ZoneTables.zones(),
        ZoneTables.segments(),
        ZoneTables.markers(),
        ZoneTables.devices(),
        ZoneTables.cover(),
        RecoveryTables.scars(),
        RecoveryTables.beds(),
        RecoveryTables.areas(),
        RecoveryTables.years(),
        RecoveryTables.spread(),
        RepairTables.sites(),
        RepairTables.units(),
        RepairTables.choice(),
        RepairTables.curve(),
        RepairTables.seasons(),
        CheckTables.layers(),
        CheckTables.findings());
  }
}
