package thudbook.predictions;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import thudbook.quantities.Check;

/**
 * The numbers of one sound. A metric that does not exist for it is absent, never NaN or infinite;
 * −0 counts as 0.
 *
 * @param values the metrics that exist, in the units of {@link Metric#unit}
 * @param envelopeOnly metrics that are shorter than two periods of the lowest strong partial
 */
public record Metrics(Map<Metric, Double> values, Reach reach, Set<Metric> envelopeOnly) {
  public Metrics {
    EnumMap<Metric, Double> copy = new EnumMap<>(Metric.class);
    values.forEach(
        (metric, value) -> {
          Check.inRange(metric.key(), value, -Double.MAX_VALUE, Double.MAX_VALUE);
          copy.put(metric, value + 0.0); // -0 becomes 0
        });
    values = Collections.unmodifiableMap(copy);
    EnumSet<Metric> only = EnumSet.noneOf(Metric.class);
    only.addAll(envelopeOnly);
    envelopeOnly = Collections.unmodifiableSet(only);
  }

  /** A metric in its unit, if it exists for this sound. */
  public OptionalDouble get(Metric metric) {
    Double value = values.get(metric);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
