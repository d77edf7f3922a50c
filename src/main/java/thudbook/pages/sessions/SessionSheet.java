package thudbook.pages.sessions;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.pages.frame.Notes;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.sessions.Moves;
import thudbook.sessions.Plan;
import thudbook.sessions.Session;
import thudbook.wording.Entry;
import thudbook.wording.PlanWords;
import thudbook.wording.PositionWords;
import thudbook.wording.Reading;

/**
 * A session as a page to read.
 *
 * @param facts day and planner, as far as they are written
 * @param steps what is patched one after the other
 * @param clashes what gets into whose way
 * @param missing recipes that the notebook does not have
 * @param moves how many there are in all
 * @param better an order with fewer clashes or moves; null: there is none
 * @param verdict about the order as it is, in words
 * @param notes safe HTML
 * @param version what an act on it has to name
 */
public record SessionSheet(
    Session session,
    List<Entry> facts,
    List<Step> steps,
    List<Clash> clashes,
    List<String> missing,
    int moves,
    @Nullable Better better,
    String verdict,
    String notes,
    long version,
    boolean binned) {

  /**
   * A step.
   *
   * @param number from 1
   * @param layer its name; empty: one recipe alone
   * @param staying titles of what the step before leaves patched until this one has sounded
   */
  public record Step(
      int number, String layer, List<Item> items, Change change, List<String> staying) {}

  /**
   * A recipe of a step.
   *
   * @param here whether the notebook has it
   * @param lastUsed when it was set up last; empty: never yet
   */
  public record Item(
      String slug,
      String title,
      String note,
      boolean here,
      boolean fixed,
      boolean stays,
      String lastUsed) {}

  /** The moves that lead to a step. */
  public record Change(
      int count,
      List<Recipe.Connection> pull,
      List<Recipe.Connection> make,
      List<Turn> switches,
      List<Turn> knobs) {
    static Change of(Moves moves) {
      return new Change(
          moves.count(),
          moves.pull(),
          moves.make(),
          moves.set().stream().filter(Moves.Setting::isSwitch).map(Turn::of).toList(),
          moves.set().stream().filter(setting -> !setting.isSwitch()).map(Turn::of).toList());
    }
  }

  /**
   * A switch or knob that moves.
   *
   * @param from where it stands; empty: not known
   */
  public record Turn(String control, String from, String to) {
    static Turn of(Moves.Setting setting) {
      return new Turn(
          setting.control().module() + " " + setting.control().name(),
          setting.from() == null ? "" : PositionWords.of(setting.from()),
          PositionWords.of(setting.to()));
    }
  }

  /**
   * Two recipes that get into each other's way.
   *
   * @param occasion why both are there at once
   * @param sentences what both want
   * @param ways what resolves it, a sentence each
   */
  public record Clash(String occasion, List<String> sentences, List<String> ways) {}

  /**
   * A better order.
   *
   * @param order numbers of steps, as the form sends them
   * @param titles of its recipes, a step each
   */
  public record Better(String order, List<String> titles, String words) {}

  /**
   * Joins a session with everything that its page shows.
   *
   * @param lastUsed tells when a recipe was set up last, in words; empty: never yet
   */
  static SessionSheet of(
      Kept<Session> stored, Plan plan, Listening listening, Function<Recipe, String> lastUsed) {
    Session session = stored.thing();
    PlanWords words = new PlanWords(plan, listening);
    Plan.Better better = plan.better();
    List<Entry> facts = new ArrayList<>();
    if (session.date() != null) {
      facts.add(new Entry("", "On", Reading.day(session.date())));
    }
    if (session.by() != null) {
      facts.add(new Entry("", "Planned by", session.by()));
    }
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < plan.steps().size(); i++) {
      steps.add(step(plan, i, lastUsed));
    }
    String resolvedByOrder =
        better.clashes() < better.clashesNow() && better.found().isPresent()
            ? "Take the order below: nothing gets into the way of what stays there."
            : "";
    return new SessionSheet(
        session,
        facts,
        steps,
        clashes(plan, words, resolvedByOrder),
        plan.missing(),
        plan.moves(),
        better.found().map(order -> better(plan, better, order)).orElse(null),
        verdict(plan, better),
        Notes.html(session.notes()),
        stored.version(),
        stored.binnedAt() != null);
  }

  private static Step step(Plan plan, int number, Function<Recipe, String> lastUsed) {
    Session.Step step = plan.steps().get(number);
    List<Item> items = new ArrayList<>();
    for (int i = 0; i < step.entries().size(); i++) {
      Session.Entry entry = step.entries().get(i);
      Optional<Recipe> recipe = plan.recipe(step.first() + i);
      items.add(
          new Item(
              entry.recipe(),
              recipe.map(Recipe::title).orElse(entry.recipe()),
              entry.note() == null ? "" : entry.note(),
              recipe.isPresent(),
              entry.fixed(),
              entry.stays(),
              recipe.map(lastUsed).orElse("")));
    }
    List<String> staying = new ArrayList<>();
    if (number > 0) {
      Session.Step before = plan.steps().get(number - 1);
      for (int i = 0; i < before.entries().size(); i++) {
        if (before.entries().get(i).stays()) {
          staying.add(title(plan, before.first() + i));
        }
      }
    }
    String layer = step.entries().get(0).layer();
    return new Step(
        number + 1,
        layer == null || items.size() == 1 ? "" : layer,
        items,
        Change.of(plan.moves(number)),
        staying);
  }

  /** The clashes, two recipes at a time. */
  private static List<Clash> clashes(Plan plan, PlanWords words, String byOrder) {
    Map<List<Integer>, List<Plan.Clash>> pairs = new LinkedHashMap<>();
    for (Plan.Clash clash : plan.clashes()) {
      pairs
          .computeIfAbsent(List.of(clash.first(), clash.second()), pair -> new ArrayList<>())
          .add(clash);
    }
    List<Clash> clashes = new ArrayList<>();
    for (List<Plan.Clash> pair : pairs.values()) {
      Plan.Clash first = pair.get(0);
      Set<String> ways = new LinkedHashSet<>();
      pair.forEach(clash -> ways.addAll(words.ways(clash)));
      boolean neighbours =
          plan.steps().stream()
              .noneMatch(step -> holds(step, first.first()) && holds(step, first.second()));
      if (neighbours && !byOrder.isEmpty()) {
        ways.add(byOrder);
      }
      clashes.add(
          new Clash(
              words.occasion(first), pair.stream().map(words::clash).toList(), List.copyOf(ways)));
    }
    return clashes;
  }

  private static boolean holds(Session.Step step, int entry) {
    return entry >= step.first() && entry < step.first() + step.entries().size();
  }

  private static Better better(Plan plan, Plan.Better better, List<Integer> order) {
    List<String> titles = new ArrayList<>();
    for (int number : order) {
      Session.Step step = plan.steps().get(number);
      List<String> names = new ArrayList<>();
      for (int i = 0; i < step.entries().size(); i++) {
        names.add(title(plan, step.first() + i));
      }
      titles.add(String.join(" with ", names));
    }
    String words = better.moves() + " moves instead of " + plan.moves();
    if (better.clashes() < better.clashesNow()) {
      words +=
          better.clashes() == 0
              ? ", and nothing gets into the way of what stays patched"
              : ", and less gets into the way of what stays patched";
    }
    return new Better(
        String.join(",", order.stream().map(String::valueOf).toList()), titles, words + ".");
  }

  private static String verdict(Plan plan, Plan.Better better) {
    if (plan.steps().size() < 2) {
      return "";
    }
    if (better.exact()) {
      return better.found().isPresent()
          ? "No other order of these has fewer; fixed places are kept."
          : "No order has fewer moves; fixed places are kept.";
    }
    return "With so many steps not every order can be looked at: this is the best that was found;"
        + " fixed places are kept.";
  }

  private static String title(Plan plan, int entry) {
    return plan.recipe(entry)
        .map(Recipe::title)
        .orElse(plan.session().entries().get(entry).recipe());
  }
}
