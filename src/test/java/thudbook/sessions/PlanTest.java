package thudbook.sessions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thudbook.envelopes.Drive;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.equipment.Rack;
import thudbook.quantities.Position;
import thudbook.recipes.Recipe;
import thudbook.recipes.StageEntry;

/** Clashes, moves and their order. Property tests: against counting by hand and every order. */
class PlanTest {
  /** What a whole order costs, counted literally: clashes of neighbours first, then moves. */
  private static long[] literally(RandomSessions sessions, Session session) {
    Set<String> plugged = Set.of();
    Map<String, String> placed = Map.of();
    List<Session.Entry> staying = List.of();
    long moves = 0;
    long clashes = 0;
    for (Session.Step step : session.steps()) {
      Set<String> wanted = new HashSet<>();
      Map<String, String> positions = new HashMap<>();
      for (Session.Entry entry : step.entries()) {
        Recipe recipe = sessions.recipes.get(entry.recipe());
        recipe.connections().forEach(c -> wanted.add(c.out() + " > " + c.in()));
        recipe
            .settings()
            .forEach(s -> positions.putIfAbsent(s.module() + "/" + s.control(), s.at().text()));
        for (Session.Entry other : staying) {
          clashes += clashing(sessions.recipes.get(other.recipe()), recipe).size();
        }
      }
      for (String cable : plugged) {
        moves += wanted.contains(cable) ? 0 : 1;
      }
      for (String cable : wanted) {
        moves += plugged.contains(cable) ? 0 : 1;
      }
      for (Map.Entry<String, String> knob : positions.entrySet()) {
        moves += knob.getValue().equals(placed.get(knob.getKey())) ? 0 : 1;
      }
      plugged = wanted;
      placed = positions;
      staying = step.entries().stream().filter(Session.Entry::stays).toList();
    }
    return new long[] {clashes, moves};
  }

  /** What two recipes both want, in words, from every pair of their lines. */
  private static Set<String> clashing(Recipe one, Recipe other) {
    Set<String> found = new HashSet<>();
    Set<String> modules = new HashSet<>();
    for (StageEntry a : one.stages()) {
      for (StageEntry b : other.stages()) {
        if (a.gate().equals(b.gate()) && a.channel().equals(b.channel())) {
          found.add("channel " + a.gate() + " " + a.channel());
        }
      }
    }
    for (Recipe.Setting a : one.settings()) {
      for (Recipe.Setting b : other.settings()) {
        for (String value : List.of("source.carrier", "envelope.decay")) {
          if (a.module().equals(b.module())
              && value.equals(a.forValue())
              && value.equals(b.forValue())) {
            found.add(value + a.module());
            modules.add(a.module());
          }
        }
      }
    }
    for (Recipe.Setting a : one.settings()) {
      for (Recipe.Setting b : other.settings()) {
        if (a.module().equals(b.module())
            && a.control().equals(b.control())
            && !a.at().equals(b.at())
            && !modules.contains(a.module())) {
          found.add("knob " + a.module() + a.control());
        }
      }
    }
    for (String input :
        List.of(
            "G1 in 1", "G1 in 2", "G2 in", "G1 control 1", "G2 control", "E1 trigger", "M1 in 1")) {
      Optional<Recipe.Connection> a =
          one.connections().stream().filter(c -> c.in().equals(input)).findFirst();
      Optional<Recipe.Connection> b =
          other.connections().stream().filter(c -> c.in().equals(input)).findFirst();
      if (a.isPresent()
          && b.isPresent()
          && !a.get().out().equals(b.get().out())
          && !modules.contains(input.substring(0, 2))) {
        found.add("input " + input);
      }
    }
    return found;
  }

  private static void everyOrder(
      List<Session.Step> steps, List<Integer> begun, Consumer<List<Integer>> to) {
    if (begun.size() == steps.size()) {
      to.accept(begun);
      return;
    }
    for (int step = 0; step < steps.size(); step++) {
      boolean fixed = steps.get(step).fixed() || steps.get(begun.size()).fixed();
      if (!begun.contains(step) && (!fixed || step == begun.size())) {
        begun.add(step);
        everyOrder(steps, begun, to);
        begun.remove(begun.size() - 1);
      }
    }
  }

  @Test
  void in500SessionsOfUpToEightRecipesNoOrderIsBetter() {
    RandomSessions sessions = new RandomSessions(new Random(50));
    int improved = 0;
    int clashing = 0;
    for (int run = 0; run < 500; run++) {
      // Every order of eight takes a while: most sessions have up to seven.
      Session session = sessions.session(run % 25 == 0 ? 8 : run % 8);
      Plan plan = Plan.of(session, sessions::recipe, Rack.EMPTY);
      long[] now = literally(sessions, session);
      assertThat(plan.moves()).isEqualTo((int) now[1]);
      long[] least = now.clone();
      everyOrder(
          session.steps(),
          new ArrayList<>(),
          order -> {
            long[] cost = literally(sessions, session.inOrder(order));
            if (cost[0] < least[0] || (cost[0] == least[0] && cost[1] < least[1])) {
              System.arraycopy(cost, 0, least, 0, 2);
            }
          });
      Plan.Better better = plan.better();
      assertThat(new long[] {better.clashes(), better.moves()}).isEqualTo(least);
      assertThat(better.clashesNow()).isEqualTo((int) now[0]);
      assertThat(better.exact()).isTrue();
      assertThat(better.found().isPresent()).isEqualTo(least[0] < now[0] || least[1] < now[1]);
      better
          .found()
          .ifPresent(
              order -> assertThat(literally(sessions, session.inOrder(order))).isEqualTo(least));
      improved += better.found().isPresent() ? 1 : 0;
      clashing += now[0] > 0 ? 1 : 0;
    }
    assertThat(improved).isGreaterThan(200);
    assertThat(clashing).isGreaterThan(100);
  }

  @Test
  void clashesAreThoseOfEveryPairThatSoundsOrStaysTogether() {
    RandomSessions sessions = new RandomSessions(new Random(49));
    for (int run = 0; run < 500; run++) {
      Session session = sessions.session(run % 9);
      Set<String> expected = new HashSet<>();
      List<Session.Step> steps = session.steps();
      for (int s = 0; s < steps.size(); s++) {
        for (int t = s; t < Math.min(s + 2, steps.size()); t++) {
          for (Session.Entry a : steps.get(s).entries()) {
            for (Session.Entry b : steps.get(t).entries()) {
              boolean together = s == t ? a.recipe().compareTo(b.recipe()) < 0 : a.stays();
              if (together) {
                int count =
                    clashing(sessions.recipes.get(a.recipe()), sessions.recipes.get(b.recipe()))
                        .size();
                if (count > 0) {
                  expected.add(a.recipe() + " " + b.recipe() + " " + count);
                }
              }
            }
          }
        }
      }
      List<Session.Entry> entries = session.entries();
      Map<String, Long> counted =
          Plan.of(session, sessions::recipe, Rack.EMPTY).clashes().stream()
              .collect(
                  Collectors.groupingBy(
                      c -> entries.get(c.first()).recipe() + " " + entries.get(c.second()).recipe(),
                      Collectors.counting()));
      Set<String> found = new HashSet<>();
      counted.forEach((pair, count) -> found.add(pair + " " + count));
      assertThat(found).isEqualTo(expected);
    }
  }

  private static Recipe recipe(String slug, String channel, Recipe.Setting... settings) {
    return RandomSessions.recipe(
        slug,
        List.of(new StageEntry("keeper", channel, Drive.UNITY, null)),
        List.of(new Recipe.Connection("Osc A out", "G1 in 1")),
        List.of(settings));
  }

  private static Module module(String label, Module.Kind kind, String gate) {
    return new Module(
        UUID.nameUUIDFromBytes(label.getBytes(StandardCharsets.UTF_8)),
        label.toLowerCase(Locale.ROOT),
        label,
        label,
        kind,
        null,
        gate,
        null,
        Gate.Caution.NONE,
        List.of(),
        List.of(),
        "");
  }

  @Test
  void whatTheRackKnowsDecidesWhatAModuleIs() {
    Recipe one = recipe("one", "quick");
    Recipe other = recipe("other", "long");
    assertThat(Conflict.between(one, other, Rack.EMPTY)).isEmpty();
    Rack rack =
        new Rack(
            List.of(
                module("Osc A", Module.Kind.OSCILLATOR, null),
                module("Osc B", Module.Kind.OSCILLATOR, null),
                module("G1", Module.Kind.LOW_PASS_GATE, "keeper")));
    Conflict conflict = new Conflict(Conflict.Kind.OSCILLATOR, "Osc A", "", "");
    assertThat(Conflict.between(one, other, rack)).containsExactly(conflict);
    Map<String, Recipe> both = Map.of("one", one, "other", other);
    Session.Entry first = new Session.Entry("one", null, null, false, true);
    Session.Entry second = new Session.Entry("other", null, null, false, false);
    Session session = new Session(new UUID(1, 1), "s", "S", null, null, List.of(first, second), "");
    Plan plan = Plan.of(session, slug -> Optional.of(both.get(slug)), rack);
    assertThat(plan.clashes()).containsExactly(new Plan.Clash(0, 1, conflict));
    assertThat(plan.spare(plan.clashes().get(0))).containsExactly("Osc B");
  }

  @Test
  void theInputsOfAChannelThatIsWantedTwiceAreNotToldToo() {
    Recipe one = recipe("one", "quick");
    Recipe other =
        RandomSessions.recipe(
            "other",
            one.stages(),
            List.of(new Recipe.Connection("N1 white", "G1 in 1")),
            List.of());
    Conflict channel = new Conflict(Conflict.Kind.CHANNEL, "keeper quick", "", "");
    Conflict input = new Conflict(Conflict.Kind.INPUT, "G1 in 1", "Osc A out", "N1 white");
    assertThat(Conflict.between(one, other, Rack.EMPTY)).containsExactly(channel, input);
    Rack rack = new Rack(List.of(module("G1", Module.Kind.LOW_PASS_GATE, "keeper")));
    assertThat(Conflict.between(one, other, rack)).containsExactly(channel);
  }

  @Test
  void aModuleIsTheLongestLabelThatAnEndBeginsWith() {
    List<String> known = List.of("Osc", "Osc A", "O");
    assertThat(Wants.label("Osc A out", known, Rack.EMPTY)).isEqualTo("Osc A");
    assertThat(Wants.label("Osc B out", known, Rack.EMPTY)).isEqualTo("Osc");
    assertThat(Wants.label("G1 in 1", known, Rack.EMPTY)).isEqualTo("G1");
    assertThat(Wants.label("Osc A", known, Rack.EMPTY)).isEqualTo("Osc A");
    assertThat(Wants.label("output", known, Rack.EMPTY)).isEqualTo("output");
  }

  @Test
  void movesNameWhereAKnobStands() {
    Position low = new Position.Named("low");
    Position half = new Position.Share(0.5);
    Recipe one = recipe("one", "quick", new Recipe.Setting("O1", "range", low, null));
    Recipe other =
        recipe(
            "other",
            "quick",
            new Recipe.Setting("O1", "range", new Position.Named("mid"), null),
            new Recipe.Setting("E1", "decay", half, "envelope.decay"));
    Moves moves = Moves.between(Patch.of(List.of(one)), Patch.of(List.of(other)));
    assertThat(moves.pull()).isEmpty();
    assertThat(moves.make()).isEmpty();
    assertThat(moves.set())
        .containsExactly(
            new Moves.Setting(new Patch.Control("O1", "range"), low, new Position.Named("mid")),
            new Moves.Setting(new Patch.Control("E1", "decay"), null, half));
    assertThat(moves.set().get(0).isSwitch()).isTrue();
    assertThat(moves.set().get(1).isSwitch()).isFalse();
  }

  @Test
  void aRecipeThatIsMissingClashesWithNothingAndIsNamed() {
    Session session = new RandomSessions(new Random(1)).session(3);
    Plan plan = Plan.of(session, slug -> Optional.empty(), Rack.EMPTY);
    assertThat(plan.missing()).containsExactly("recipe-0", "recipe-1", "recipe-2");
    assertThat(plan.clashes()).isEmpty();
    assertThat(plan.moves()).isZero();
  }

  @Test
  void aLayerIsNotTorn() {
    Session session = new RandomSessions(new Random(2)).session(0);
    List<Session.Entry> entries =
        IntStream.range(0, 3)
            .mapToObj(i -> new Session.Entry("r" + i, null, i == 1 ? null : "storm", false, false))
            .toList();
    assertThat(Session.tornLayer(entries)).isEqualTo(2);
    assertThatThrownBy(() -> session.withEntries(entries))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("storm");
  }
}
