package thudbook.sessions;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * The order of steps that costs least.
 *
 * <p>Up to {@value #EXACT_UP_TO} steps it is found by dynamic programming over subsets: the
 * cheapest way to play the steps of a set and end with one of them, from the cheapest ways to play
 * the set without it, n²·2ⁿ sums in all. Beyond, by local search from many starts, within a bounded
 * amount of work; the answer says which.
 *
 * <p>Source: M. Held and R. M. Karp, "A dynamic programming approach to sequencing problems",
 * Journal of SIAM 10 (1962), 196–210 (title from memory).
 */
public final class FewestMoves {
  /** So many steps are ordered exactly. */
  public static final int EXACT_UP_TO = 12;

  static final long UNREACHED = Long.MAX_VALUE / 4;

  private FewestMoves() {}

  /** What steps cost; numbers from 0 on are steps. Nothing is negative. */
  public interface Cost {
    /** The cost of a step that comes first. */
    long first(int step);

    /** The cost of a step behind another. */
    long between(int before, int after);

    /** The cost of a whole order. */
    default long of(List<Integer> order) {
      long sum = order.isEmpty() ? 0 : first(order.get(0));
      for (int i = 1; i < order.size(); i++) {
        sum += between(order.get(i - 1), order.get(i));
      }
      return sum;
    }
  }

  /**
   * An order of steps.
   *
   * @param exact whether no order is cheaper; if not, it is only the best one that was found
   */
  public record Order(List<Integer> steps, long cost, boolean exact) {
    public Order {
      steps = List.copyOf(steps);
    }
  }

  /**
   * The cheapest order of the steps 0 to count − 1. Of several cheapest ones always the same.
   *
   * @param fixed steps that keep their place: step 2 stays third
   */
  public static Order of(int count, Cost cost, Set<Integer> fixed) {
    Table table = Table.of(count, cost, fixed);
    boolean exact = count <= EXACT_UP_TO;
    int[] order = exact ? exactly(table) : new OrderSearch(table).best();
    List<Integer> steps = Arrays.stream(order).boxed().toList();
    return new Order(steps, cost.of(steps), exact);
  }

  private static int[] exactly(Table table) {
    int count = table.count();
    if (count == 0) {
      return new int[0];
    }
    long[][] cheapest = new long[1 << count][count];
    int[][] before = new int[1 << count][count];
    for (int set = 1; set < 1 << count; set++) {
      Arrays.fill(cheapest[set], UNREACHED);
      int place = Integer.bitCount(set) - 1;
      for (int last = 0; last < count; last++) {
        if ((set >> last & 1) == 0 || !table.mayStand(last, place)) {
          continue;
        }
        int rest = set & ~(1 << last);
        if (rest == 0) {
          cheapest[set][last] = table.first(last);
          continue;
        }
        for (int previous = 0; previous < count; previous++) {
          if ((rest >> previous & 1) == 1) {
            long sum = cheapest[rest][previous] + table.between(previous, last);
            if (sum < cheapest[set][last]) {
              cheapest[set][last] = sum;
              before[set][last] = previous;
            }
          }
        }
      }
    }
    int set = (1 << count) - 1;
    int last = 0;
    for (int step = 1; step < count; step++) {
      last = cheapest[set][step] < cheapest[set][last] ? step : last;
    }
    int[] order = new int[count];
    for (int place = count - 1; place >= 0; place--) {
      order[place] = last;
      int previous = before[set][last];
      set &= ~(1 << last);
      last = previous;
    }
    return order;
  }

  /** All costs, asked for once. */
  static final class Table {
    private final long[] first;
    private final long[][] between;
    private final boolean[] fixed;

    private Table(long[] first, long[][] between, boolean[] fixed) {
      this.first = first;
      this.between = between;
      this.fixed = fixed;
    }

    static Table of(int count, Cost cost, Set<Integer> fixed) {
      long[] first = new long[count];
      long[][] between = new long[count][count];
      boolean[] keeps = new boolean[count];
      for (int i = 0; i < count; i++) {
        first[i] = cost.first(i);
        keeps[i] = fixed.contains(i);
        for (int j = 0; j < count; j++) {
          between[i][j] = i == j ? UNREACHED : cost.between(i, j);
        }
      }
      return new Table(first, between, keeps);
    }

    int count() {
      return first.length;
    }

    long first(int step) {
      return first[step];
    }

    long between(int before, int after) {
      return between[before][after];
    }

    boolean mayStand(int step, int place) {
      return step == place || !(fixed[step] || fixed[place]);
    }

    /** The places whose steps may change. */
    List<Integer> freePlaces() {
      return new ArrayList<>(
          IntStream.range(0, count()).filter(place -> !fixed[place]).boxed().toList());
    }
  }
}
