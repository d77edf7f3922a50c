package thudbook.documents.tree;

import org.jspecify.annotations.Nullable;
import thudbook.quantities.Dimension;

/** The rule for times in lists: the first is 0, and they rise. */
public final class Moments {
  private Moments() {}

  public static void check(Place place, double seconds, @Nullable Double previous, Faults faults) {
    if (previous == null && seconds != 0) {
      String found = Dimension.TIME.write(seconds);
      faults.add(place, "not-at-zero", found, "0 ms, for the first time is 0");
    } else if (previous != null && seconds <= previous) {
      String found = Dimension.TIME.write(seconds);
      faults.add(place, "not-rising", found, "a time after " + Dimension.TIME.write(previous));
    }
  }
}
