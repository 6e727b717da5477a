package org.meadowmark.cluster.bay;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.spark.broadcast.Broadcast;
import org.meadowmark.core.assessment.LoadedSurvey;
import org.meadowmark.core.assessment.SurveyLoader;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.store.RowStore;
import org.meadowmark.core.survey.SurveyDefinition;
import org.meadowmark.core.write.record.FileDigest;

/**
 * Checks and projects a bay from the rows of its layers. The same rows give the same survey, in
 * whatever order and on whatever machine, so a bay is read again where it is needed again.
 */
final class BayReader implements Serializable {
  private static final long serialVersionUID = 1L;

  private final SurveySpec survey;
  private final ArrayList<LayerHead> heads;
  private final Broadcast<ArrayList<ArrayList<byte[]>>> ofEveryBay;

  BayReader(
      SurveySpec survey,
      List<LayerHead> heads,
      Broadcast<ArrayList<ArrayList<byte[]>>> ofEveryBay) {
    this.survey = survey;
    this.heads = new ArrayList<>(heads);
    this.ofEveryBay = ofEveryBay;
  }

  /**
   * A bay as read.
   *
   * @param definition what to assess
   * @param loaded the survey
   * @param rows digests of the rows, by layer
   */
  record Bay(SurveyDefinition definition, LoadedSurvey loaded, List<FileDigest> rows) {}

  /** Rows by layer, to which those of one bay are to be added. */
  List<List<byte[]>> rowsOfEveryBay() {
    List<List<byte[]>> rows = new ArrayList<>();
    ofEveryBay.value().forEach(layer -> rows.add(new ArrayList<>(layer)));
    return rows;
  }

  /**
   * Reads a bay.
   *
   * @param name its name
   * @param rows rows by layer; the list is empty afterwards
   * @param progress hears how far the work is
   * @param store keeps scars; where there is none they are in memory
   */
  Bay read(String name, List<List<byte[]>> rows, Progress progress, Optional<RowStore> store) {
    SurveyDefinition definition = survey.definition(name);
    BayRowsReader reader = new BayRowsReader(definition.layers(), heads, rows, name);
    LoadedSurvey loaded =
        new SurveyLoader(definition, SurveySpec.tables(), progress, reader, store).load();
    rows.clear();
    return new Bay(definition, loaded, reader.digests());
  }
}
