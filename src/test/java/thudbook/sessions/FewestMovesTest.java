package thudbook.sessions;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.jgrapht.alg.spanning.PrimMinimumSpanningTree;
import org.jgrapht.alg.tour.HeldKarpTSP;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;
import org.junit.jupiter.api.Test;
import thudbook.equipment.Rack;

/**
 * The order with the fewest moves. Property tests: against exhaustive search, a graph library's
 * exact tour and a proven lower bound.
 */
class FewestMovesTest {
  /** Larger than all costs here together. */
  private static final double FAR = 1e6;

  private static FewestMoves.Cost anyCost(int count, Random random) {
    long[][] costs = new long[count + 1][count];
    for (long[] row : costs) {
      for (int i = 0; i < count; i++) {
        row[i] = random.nextInt(1000);
      }
    }
    return new FewestMoves.Cost() {
      @Override
      public long first(int step) {
        return costs[count][step];
      }

      @Override
      public long between(int before, int after) {
        return costs[before][after];
      }
    };
  }

  private static Set<Integer> someFixed(int count, Random random) {
    Set<Integer> fixed = new HashSet<>();
    IntStream.range(0, count).filter(i -> random.nextInt(6) == 0).forEach(fixed::add);
    return fixed;
  }

  /** Every order, written out one by one. */
  private static long cheapestOfAll(
      int count, FewestMoves.Cost cost, Set<Integer> fixed, List<Integer> begun) {
    if (begun.size() == count) {
      return cost.of(begun);
    }
    long least = Long.MAX_VALUE;
    for (int step = 0; step < count; step++) {
      boolean misplaced =
          (fixed.contains(step) || fixed.contains(begun.size())) && step != begun.size();
      if (!begun.contains(step) && !misplaced) {
        begun.add(step);
        least = Math.min(least, cheapestOfAll(count, cost, fixed, begun));
        begun.remove(begun.size() - 1);
      }
    }
    return least;
  }

  private static void assertOrder(FewestMoves.Order order, int count, Set<Integer> fixed) {
    assertThat(order.steps())
        .containsExactlyInAnyOrderElementsOf(IntStream.range(0, count).boxed().toList());
    fixed.forEach(step -> assertThat(order.steps().get(step)).isEqualTo(step));
  }

  @Test
  void upToEightStepsNoOrderOfAllIsCheaper() {
    Random random = new Random(51);
    for (int run = 0; run < 200; run++) {
      int count = random.nextInt(8);
      FewestMoves.Cost cost = anyCost(count, random);
      Set<Integer> fixed = someFixed(count, random);
      FewestMoves.Order order = FewestMoves.of(count, cost, fixed);
      assertOrder(order, count, fixed);
      assertThat(order.exact()).isTrue();
      assertThat(order.cost())
          .isEqualTo(cheapestOfAll(count, cost, fixed, new ArrayList<>()))
          .isEqualTo(cost.of(order.steps()));
    }
  }

  /**
   * The search for many steps, on so few that the exact answer is known: with every place fixed, or
   * one exchange away, it has to find it; otherwise it must not be better than it.
   */
  @Test
  void theSearchForManyStepsIsNeverBetterThanTheExactAnswerAndMostlyEqual() {
    Random random = new Random(52);
    int equal = 0;
    for (int run = 0; run < 200; run++) {
      int count = 1 + random.nextInt(8);
      FewestMoves.Cost cost = anyCost(count, random);
      Set<Integer> fixed = someFixed(count, random);
      long exact = FewestMoves.of(count, cost, fixed).cost();
      int[] found = new OrderSearch(FewestMoves.Table.of(count, cost, fixed)).best();
      long searched = cost.of(IntStream.of(found).boxed().toList());
      assertThat(searched).isGreaterThanOrEqualTo(exact);
      equal += searched == exact ? 1 : 0;
    }
    assertThat(equal).isGreaterThan(180);
  }

  /**
   * Twelve recipes against the tour of a graph library. What a day costs but for its first step is
   * the same both ways: with C and S the connections and settings of a recipe, going from A to B
   * takes |C(A) xor C(B)| + |S(B)| − |S(A) and S(B)|, and all |S| are paid once, also that of the
   * first. So it is a tour over the recipes, an empty rack and an end that costs nothing.
   */
  @Test
  void twelveRecipesAreOrderedLikeTheTourOfALibrary() {
    for (int seed = 0; seed < 20; seed++) {
      Day day = new Day(12, new Random(500 + seed));
      SimpleWeightedGraph<Integer, DefaultWeightedEdge> graph = day.graph(new double[12]);
      graph.setEdgeWeight(graph.getEdge(Day.RACK, Day.END), -FAR);
      double tour = new HeldKarpTSP<Integer, DefaultWeightedEdge>().getTour(graph).getWeight();
      FewestMoves.Order order = FewestMoves.of(12, day.plan.cost(), Set.of());
      assertThat(order.exact()).isTrue();
      assertThat((double) order.cost()).isEqualTo(tour + FAR + day.settings());
    }
  }

  /**
   * Forty recipes against a lower bound: every order is a spanning tree of recipes, empty rack and
   * end, in which each recipe has two edges, so that the least tree is never dearer; prices on the
   * recipes, which every order pays twice, drive the least tree towards an order. Held and Karp,
   * "The traveling-salesman problem and minimum spanning trees", Operations Research 18 (1970)
   * (from memory).
   */
  @Test
  void fortyRecipesAreWithinFivePercentOfALowerBound() {
    for (int seed = 0; seed < 8; seed++) {
      Day day = new Day(40, new Random(700 + seed));
      double bound = day.lowerBound() + day.settings();
      FewestMoves.Order order = FewestMoves.of(40, day.plan.cost(), Set.of());
      assertOrder(order, 40, Set.of());
      assertThat(order.exact()).isFalse();
      assertThat((double) order.cost()).isBetween(bound - 1e-6, 1.05 * bound);
    }
  }

  @Test
  void manyStepsKeepTheirFixedPlacesAndCostNoMoreThanBefore() {
    for (int count : new int[] {13, 25, 100}) {
      Random random = new Random(count);
      FewestMoves.Cost cost = anyCost(count, random);
      Set<Integer> fixed = someFixed(count, random);
      FewestMoves.Order order = FewestMoves.of(count, cost, fixed);
      assertOrder(order, count, fixed);
      assertThat(order.cost()).isLessThan(cost.of(IntStream.range(0, count).boxed().toList()));
    }
  }

  /** A day of recipes without layers, and what it costs as a graph. */
  private static final class Day {
    static final int RACK = -1;
    static final int END = -2;

    final Plan plan;
    private final int count;
    private final double[][] weights;

    Day(int count, Random random) {
      this.count = count;
      RandomSessions sessions = new RandomSessions(random);
      Session session = sessions.session(count);
      List<Session.Entry> alone =
          session.entries().stream()
              .map(e -> new Session.Entry(e.recipe(), null, null, false, false))
              .toList();
      plan = Plan.of(session.withEntries(alone), sessions::recipe, Rack.EMPTY);
      weights = new double[count][count];
      for (int i = 0; i < count; i++) {
        for (int j = 0; j < i; j++) {
          weights[i][j] = weight(i, j);
        }
      }
    }

    private Patch patch(int step) {
      return Patch.of(plan.recipes(plan.steps().get(step)));
    }

    int settings() {
      return IntStream.range(0, count).map(i -> patch(i).positions().size()).sum();
    }

    private double weight(int one, int other) {
      Set<Object> connections = new HashSet<>(patch(one).connections());
      Set<Object> common = new HashSet<>(connections);
      common.retainAll(patch(other).connections());
      connections.addAll(patch(other).connections());
      Set<Object> settings = new HashSet<>(patch(one).positions().entrySet());
      settings.retainAll(patch(other).positions().entrySet());
      return connections.size() - common.size() - settings.size();
    }

    /** All edges, but for one between rack and end that only a tour needs, which is far. */
    SimpleWeightedGraph<Integer, DefaultWeightedEdge> graph(double[] prices) {
      SimpleWeightedGraph<Integer, DefaultWeightedEdge> graph =
          new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
      graph.addVertex(RACK);
      graph.addVertex(END);
      graph.setEdgeWeight(graph.addEdge(RACK, END), FAR);
      for (int i = 0; i < count; i++) {
        graph.addVertex(i);
        int made = patch(i).connections().size();
        graph.setEdgeWeight(graph.addEdge(RACK, i), made + prices[i]);
        graph.setEdgeWeight(graph.addEdge(END, i), prices[i]);
        for (int j = 0; j < i; j++) {
          graph.setEdgeWeight(graph.addEdge(i, j), weights[i][j] + prices[i] + prices[j]);
        }
      }
      return graph;
    }

    double lowerBound() {
      double[] prices = new double[count];
      double best = Double.NEGATIVE_INFINITY;
      double stride = 2;
      for (int round = 0; round < 400; round++) {
        SimpleWeightedGraph<Integer, DefaultWeightedEdge> graph = graph(prices);
        var tree = new PrimMinimumSpanningTree<>(graph).getSpanningTree();
        double paid = 2 * Arrays.stream(prices).sum();
        best = Math.max(best, tree.getWeight() - paid);
        int[] edges = new int[count];
        for (DefaultWeightedEdge edge : tree.getEdges()) {
          for (int end : new int[] {graph.getEdgeSource(edge), graph.getEdgeTarget(edge)}) {
            if (end >= 0) {
              edges[end]++;
            }
          }
        }
        for (int i = 0; i < count; i++) {
          prices[i] += stride * (edges[i] - 2);
        }
        stride *= 0.985;
      }
      return best;
    }
  }
}
