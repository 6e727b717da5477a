package org.meadowmark.core.project;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.meadowmark.core.check.FindingLog;
import org.meadowmark.core.model.FeatureRef;
import org.meadowmark.core.model.Finding;
import org.meadowmark.core.model.Finding.Level;
import org.meadowmark.core.model.Finding.Treatment;
import org.meadowmark.core.model.FindingCode;
import org.meadowmark.core.model.Ids;
import org.meadowmark.core.model.LayerRole;
import org.meadowmark.core.model.Located;
import org.meadowmark.core.store.RowStore;

/**
 * Puts the layers of one role together, in id order.
 *
 * <p>Where an id of a layer is also an id of a layer before it, all ids of the later layer get the
 * layer's name in front, so that they stay unique and can be traced.
 */
final class LayerMerger<T extends Located> {
  private final LayerRole role;
  private final BiFunction<T, String, T> withId;
  private final FindingLog log;

  LayerMerger(LayerRole role, BiFunction<T, String, T> withId, FindingLog log) {
    this.role = role;
    this.withId = withId;
    this.log = log;
  }

  /**
   * Puts layers together.
   *
   * @param newRows gives rows for features that get another id
   */
  List<T> merge(List<List<T>> layers, Supplier<RowStore.Rows<T>> newRows) {
    RowStore.Rows<T> all = newRows.get();
    List<String> idOfRow = new ArrayList<>();
    Set<String> ids = new HashSet<>();
    for (List<T> layer : layers) {
      UnaryOperator<T> renamed = withoutClash(layer, ids);
      int first = idOfRow.size();
      for (T feature : layer) {
        T unique = renamed.apply(feature);
        all.add(unique);
        idOfRow.add(unique.id());
      }
      ids.addAll(idOfRow.subList(first, idOfRow.size()));
    }
    int[] places =
        IntStream.range(0, idOfRow.size())
            .boxed()
            .sorted(Comparator.comparing(idOfRow::get, Ids.ORDER))
            .mapToInt(Integer::intValue)
            .toArray();
    return RowStore.picked(all.list(), places);
  }

  private UnaryOperator<T> withoutClash(List<T> layer, Set<String> ids) {
    long clashes = layer.stream().filter(feature -> ids.contains(feature.id())).count();
    if (clashes == 0) {
      return UnaryOperator.identity();
    }
    FeatureRef ref = layer.get(0).ref();
    String prefix = ref.layer() + "/";
    int n = 2;
    while (anyClash(layer, prefix, ids)) {
      prefix = ref.layer() + "-" + n++ + "/";
    }
    log.add(
        new Finding(
            FindingCode.DUPLICATE_ID,
            Level.NOTE,
            Treatment.KEPT,
            role,
            FeatureRef.layer(ref.file(), ref.layer()),
            clashes + " id(s) of the layer are also ids of another layer of " + role.key(),
            "all ids of this layer begin with '" + prefix + "' in the results"));
    String front = prefix;
    return feature -> withId.apply(feature, front + feature.id());
  }

  private boolean anyClash(List<T> layer, String prefix, Set<String> ids) {
    return layer.stream().anyMatch(feature -> ids.contains(prefix + feature.id()));
  }
}
