package org.meadowmark.core.write.record;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.meadowmark.core.model.Range;
import org.meadowmark.core.survey.ComparisonParameters;
import org.meadowmark.core.survey.ExposureBasis;
import org.meadowmark.core.survey.MatchingParameters;
import org.meadowmark.core.survey.ParameterName;
import org.meadowmark.core.survey.Parameters;
import org.meadowmark.core.survey.Parameters.SeverityDenominator;
import org.meadowmark.core.survey.PlantingPattern;
import org.meadowmark.core.survey.RankingParameters;
import org.meadowmark.core.survey.RecoveryParameters;
import org.meadowmark.core.survey.RepairParameters;
import org.meadowmark.core.survey.WithinYear;
import org.meadowmark.core.survey.ZoneParameters;

/**
 * Every parameter with its value, under the name it has in a survey file. The components of the
 * record, and of the records inside it, are read by reflection so that a new parameter cannot be
 * left out of the run record.
 */
final class ParameterValues {
  private ParameterValues() {}

  static ObjectNode of(Parameters parameters) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    List<Object> values = new ArrayList<>();
    addValues(parameters, values);
    ParameterName[] names = ParameterName.values();
    if (values.size() != names.length) {
      throw new IllegalStateException("every parameter has a name, in the same order");
    }
    for (int i = 0; i < names.length; i++) {
      put(node, names[i].key(), values.get(i));
    }
    return node;
  }

  private static void addValues(Record owner, List<Object> values) {
    for (RecordComponent component : owner.getClass().getRecordComponents()) {
      Object value = value(component, owner);
      if (value instanceof RankingParameters
          || value instanceof ZoneParameters
          || value instanceof RecoveryParameters
          || value instanceof RepairParameters
          || value instanceof MatchingParameters
          || value instanceof ComparisonParameters) {
        addValues((Record) value, values);
      } else if (!(value instanceof RepairParameters.Placeholders)) {
        values.add(value);
      }
    }
  }

  private static Object value(RecordComponent component, Record owner) {
    try {
      return component.getAccessor().invoke(owner);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("accessors of a public record can be called", e);
    }
  }

  private static void put(ObjectNode node, String key, Object value) {
    if (value instanceof Optional<?> optional) {
      optional.ifPresentOrElse(inner -> put(node, key, inner), () -> node.putNull(key));
    } else if (value instanceof OptionalDouble optional) {
      optional.ifPresentOrElse(inner -> node.put(key, inner), () -> node.putNull(key));
    } else if (value instanceof Double number) {
      node.put(key, number);
    } else if (value instanceof Long number) {
      node.put(key, number);
    } else if (value instanceof Integer number) {
      node.put(key, number);
    } else if (value instanceof Boolean flag) {
      node.put(key, flag);
    } else if (value instanceof SeverityDenominator denominator) {
      node.put(key, denominator.key());
    } else if (value instanceof WithinYear moment) {
      node.put(key, moment.key());
    } else if (value instanceof ExposureBasis basis) {
      node.put(key, basis.key());
    } else if (value instanceof Map<?, ?> map) {
      var object = node.putObject(key);
      map.forEach((inner, range) -> put(object, inner.toString(), range));
    } else if (value instanceof PlantingPattern pattern) {
      node.put(key, pattern.key());
    } else if (value instanceof Range range) {
      node.putArray(key).add(range.low()).add(range.middle()).add(range.high());
    } else if (value instanceof List<?> list) {
      var array = node.putArray(key);
      list.forEach(item -> array.add(((Number) item).doubleValue()));
    } else {
      node.put(key, value.toString());
    }
  }
}
