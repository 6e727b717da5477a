package org.meadowmark.core.rank.evidence;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The surveyed bed within reach of a segment.
 *
 * @param hectares all of it
 * @param hectaresByClass by key of the severity class of the whole bed, lightest first; beds of
 *     unknown class last
 */
public record BedsInReach(double hectares, Map<String, Double> hectaresByClass) {

  /**
   * {@return beds in reach from hectares in the order of classes}
   *
   * @param classes keys of the severity classes, lightest first, then that of beds of unknown class
   * @param hectares bed in reach of each class, in that order; classes without any are left out
   */
  public static BedsInReach of(List<String> classes, double[] hectares) {
    Map<String, Double> byClass = new LinkedHashMap<>();
    double sum = 0;
    for (int i = 0; i < hectares.length; i++) {
      if (hectares[i] > 0) {
        byClass.put(classes.get(i), hectares[i]);
        sum += hectares[i];
      }
    }
    return new BedsInReach(sum, byClass);
  }

  /**
   * {@return key of the worst class in reach; empty text where none is known}
   *
   * @param classes keys of the known classes, lightest first
   */
  public String worstClass(List<String> classes) {
    String worst = "";
    for (String key : classes) {
      worst = hectaresByClass.containsKey(key) ? key : worst;
    }
    return worst;
  }

  /**
   * {@return mean class of the bed whose class is known, weighted by area: 0 for all in the
   * lightest class, 1 for all in the worst}
   *
   * @param classes keys of the known classes, lightest first
   */
  public OptionalDouble meanClass(List<String> classes) {
    double area = 0;
    double sum = 0;
    for (int i = 0; i < classes.size(); i++) {
      double here = hectaresByClass.getOrDefault(classes.get(i), 0.0);
      area += here;
      sum += here * i;
    }
    return area > 0 && classes.size() > 1
        ? OptionalDouble.of(sum / area / (classes.size() - 1))
        : OptionalDouble.empty();
  }
}
