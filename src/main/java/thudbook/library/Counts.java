package thudbook.library;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * How many recipes would remain if one more thing were asked.
 *
 * @param total how many remain now
 * @param values of each facet, with what would remain if a value were chosen: of tags in addition
 *     to those that are, of other facets beside those that are. Values with nothing are left out.
 * @param flags what would remain if a flag had to hold, whatever is asked of it now
 * @param histograms of some quantities, how many lie in each bar, whatever is asked of that
 *     quantity now
 */
public record Counts(
    int total,
    Map<Facet, List<Value>> values,
    Map<Flag, Integer> flags,
    Map<Quantity, List<Integer>> histograms) {

  /**
   * A value of a facet.
   *
   * @param label as it is shown
   */
  public record Value(String key, String label, int recipes) {}

  public Counts {
    EnumMap<Facet, List<Value>> copy = new EnumMap<>(Facet.class);
    values.forEach((facet, list) -> copy.put(facet, List.copyOf(list)));
    values = Collections.unmodifiableMap(copy);
    EnumMap<Flag, Integer> flagsCopy = new EnumMap<>(Flag.class);
    flagsCopy.putAll(flags);
    flags = Collections.unmodifiableMap(flagsCopy);
    EnumMap<Quantity, List<Integer>> bars = new EnumMap<>(Quantity.class);
    histograms.forEach((quantity, list) -> bars.put(quantity, List.copyOf(list)));
    histograms = Collections.unmodifiableMap(bars);
  }
}
