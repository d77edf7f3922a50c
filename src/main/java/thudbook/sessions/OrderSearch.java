package thudbook.sessions;

import java.util.Arrays;

/**
 * A cheap order of many steps, by local search: from each start, stretches of steps are moved,
 * turned round and exchanged as long as that makes the order cheaper. Starts are the order as it is
 * and, for every step, the one that goes from it to the nearest step each time. Steps with a fixed
 * place stay there; the others share the places between. The work is bounded, not the time, so that
 * the same question always has the same answer.
 *
 * <p>Source: I. Or, dissertation, Northwestern University, 1976 (moves of up to three steps); G. A.
 * Croes, Operations Research 6 (1958), 791–812 (turned stretches); both from memory.
 */
final class OrderSearch {
  /** Sums of two costs; a start under way is finished, so that it is a little more. */
  private static final long MOST_SUMS = 60_000_000;

  private static final int LONGEST_MOVED = 3;

  private final FewestMoves.Table table;
  private final int[] places;

  /** The order under work, and one that it is compared with. */
  private int[] order = {};

  private int[] tried = {};
  private long sums;

  OrderSearch(FewestMoves.Table table) {
    this.table = table;
    places = table.freePlaces().stream().mapToInt(Integer::intValue).toArray();
  }

  int[] best() {
    int count = table.count();
    int[] best = asItIs();
    long cheapest = Long.MAX_VALUE;
    for (int start = -1; start < places.length && sums < MOST_SUMS; start++) {
      order = start < 0 ? asItIs() : nearestFrom(places[start]);
      improve();
      long cost = cost(order, 0, count - 1);
      if (cost < cheapest) {
        cheapest = cost;
        best = order.clone();
      }
    }
    return best;
  }

  private int[] asItIs() {
    int[] same = new int[table.count()];
    Arrays.setAll(same, i -> i);
    return same;
  }

  /** Puts one step at the first free place and behind it always the nearest that is left. */
  private int[] nearestFrom(int start) {
    int[] made = asItIs();
    boolean[] used = new boolean[made.length];
    for (int i = 0; i < places.length; i++) {
      int place = places[i];
      int next = i == 0 ? start : -1;
      for (int candidate : places) {
        if (i > 0
            && !used[candidate]
            && (next < 0 || costAt(made, place, candidate) < costAt(made, place, next))) {
          next = candidate;
        }
      }
      used[next] = true;
      made[place] = next;
    }
    return made;
  }

  private long costAt(int[] made, int place, int step) {
    return place == 0 ? table.first(step) : table.between(made[place - 1], step);
  }

  private void improve() {
    tried = order.clone();
    boolean better = true;
    while (better && sums < MOST_SUMS) {
      better = false;
      for (int from = 0; from < places.length; from++) {
        for (int to = from + 1; to < places.length; to++) {
          better |= turned(from, to);
          better |= exchanged(from, to);
        }
        for (int length = 1; length <= LONGEST_MOVED; length++) {
          for (int to = 0; to < places.length && from + length <= places.length; to++) {
            better |= moved(from, length, to, false);
            better |= length > 1 && moved(from, length, to, true);
          }
        }
      }
    }
  }

  private boolean turned(int from, int to) {
    for (int i = from; i <= to; i++) {
      tried[places[i]] = order[places[from + to - i]];
    }
    return keptIfCheaper(from, to);
  }

  private boolean exchanged(int from, int to) {
    tried[places[from]] = order[places[to]];
    tried[places[to]] = order[places[from]];
    return keptIfCheaper(from, to);
  }

  /** Moves the steps at from … from + length − 1 so that the first of them comes to {@code to}. */
  private boolean moved(int from, int length, int to, boolean turned) {
    if (to == from || to + length > places.length) {
      return false;
    }
    int low = Math.min(from, to);
    int high = Math.max(from, to) + length - 1;
    int source = low;
    for (int i = low; i <= high; i++) {
      if (i >= to && i < to + length) {
        int within = turned ? length - 1 - (i - to) : i - to;
        tried[places[i]] = order[places[from + within]];
      } else {
        source = source == from ? from + length : source;
        tried[places[i]] = order[places[source++]];
      }
    }
    return keptIfCheaper(low, high);
  }

  /** Compares only where the two differ. */
  private boolean keptIfCheaper(int low, int high) {
    int first = places[low];
    int last = Math.min(places[high] + 1, order.length - 1);
    boolean cheaper = cost(tried, first, last) < cost(order, first, last);
    int[] from = cheaper ? tried : order;
    int[] into = cheaper ? order : tried;
    System.arraycopy(from, first, into, first, last - first + 1);
    return cheaper;
  }

  /** What the steps at these places cost, each behind the one before it. */
  private long cost(int[] of, int from, int to) {
    sums += to - from + 1;
    long sum = 0;
    for (int place = from; place <= to; place++) {
      sum += costAt(of, place, of[place]);
    }
    return sum;
  }
}
