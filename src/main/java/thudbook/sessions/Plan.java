package thudbook.sessions;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thudbook.equipment.Module;
import thudbook.equipment.Rack;
import thudbook.recipes.Recipe;

/**
 * A session joined with its recipes: what gets into whose way, and what is moved when.
 *
 * <p>An order costs its moves, from the empty rack on. A recipe that stays patched and gets into
 * the way of the step behind it costs more than all moves together: an order with fewer such
 * clashes goes first, then the one with fewer moves. Clashes within a layer are the same in every
 * order.
 */
public final class Plan {
  /** Dearer than all moves of the longest session: 100 steps of 200 connections and settings. */
  private static final long CLASH = 10_000_000;

  private final Session session;
  private final List<Session.Step> steps;
  private final List<Optional<Recipe>> recipes;
  private final List<Patch> patches;
  private final Rack rack;

  private Plan(Session session, List<Optional<Recipe>> recipes, Rack rack) {
    this.session = session;
    this.steps = session.steps();
    this.recipes = recipes;
    this.rack = rack;
    this.patches =
        steps.stream()
            .map(
                step ->
                    Patch.of(
                        indexes(step).mapToObj(recipes::get).flatMap(Optional::stream).toList()))
            .toList();
  }

  /**
   * Joins a session with its recipes.
   *
   * @param recipes finds a recipe by its slug
   */
  public static Plan of(Session session, Function<String, Optional<Recipe>> recipes, Rack rack) {
    List<Optional<Recipe>> found =
        session.entries().stream().map(entry -> recipes.apply(entry.recipe())).toList();
    return new Plan(session, found, rack);
  }

  /**
   * Two recipes that get into each other's way.
   *
   * @param first index of an entry
   * @param second index of an entry behind it: of the same layer, or of the next step while the
   *     first stays patched
   */
  public record Clash(int first, int second, Conflict conflict) {}

  /** The session. */
  public Session session() {
    return session;
  }

  /** What is patched one after the other. */
  public List<Session.Step> steps() {
    return steps;
  }

  /** The recipe of an entry, if there is one of that name. */
  public Optional<Recipe> recipe(int entry) {
    return recipes.get(entry);
  }

  /** Slugs of entries for which there is no recipe. */
  public List<String> missing() {
    return IntStream.range(0, recipes.size())
        .filter(i -> recipes.get(i).isEmpty())
        .mapToObj(i -> session.entries().get(i).recipe())
        .distinct()
        .toList();
  }

  /**
   * Modules of the kind of one that is wanted twice which none of the recipes uses that are patched
   * at that time; none if the rack does not have it.
   */
  public List<String> spare(Clash clash) {
    Module.Kind kind = rack.module(clash.conflict().what()).map(Module::kind).orElse(null);
    boolean whole =
        clash.conflict().kind() == Conflict.Kind.OSCILLATOR
            || clash.conflict().kind() == Conflict.Kind.ENVELOPE;
    if (kind == null || !whole) {
      return List.of();
    }
    Set<Integer> there = new HashSet<>(besides(clash.first()));
    there.addAll(besides(clash.second()));
    Set<String> used = new HashSet<>();
    there.forEach(entry -> recipe(entry).ifPresent(r -> used.addAll(Wants.labels(r, rack))));
    return rack.modules().stream()
        .filter(module -> module.kind() == kind && !used.contains(module.label()))
        .map(Module::label)
        .toList();
  }

  /** All clashes, by entries. */
  public List<Clash> clashes() {
    List<Clash> clashes = new ArrayList<>();
    for (int number = 0; number < steps.size(); number++) {
      List<Integer> own = indexes(steps.get(number)).boxed().toList();
      for (int i : own) {
        own.stream().filter(j -> j > i).forEach(j -> clashes.addAll(between(i, j)));
      }
      if (number + 1 < steps.size()) {
        clashes.addAll(overlapping(number, number + 1));
      }
    }
    return clashes;
  }

  /** The clashes of what stays of one step with the step that follows it. */
  private List<Clash> overlapping(int before, int after) {
    List<Clash> clashes = new ArrayList<>();
    for (int i : indexes(steps.get(before)).toArray()) {
      if (session.entries().get(i).stays()) {
        indexes(steps.get(after)).forEach(j -> clashes.addAll(between(i, j)));
      }
    }
    return clashes;
  }

  private List<Clash> between(int first, int second) {
    Optional<Recipe> one = recipes.get(first);
    Optional<Recipe> other = recipes.get(second);
    if (one.isEmpty() || other.isEmpty()) {
      return List.of();
    }
    return Conflict.between(one.get(), other.get(), rack).stream()
        .map(conflict -> new Clash(first, second, conflict))
        .toList();
  }

  /**
   * The entries that sound together with one, or are patched while it is: of its step, of the step
   * before as far as it stays, of the step behind if it stays itself.
   */
  public Set<Integer> besides(int entry) {
    int step = IntStream.range(0, steps.size()).filter(s -> holds(s, entry)).findFirst().orElse(-1);
    Set<Integer> others = new HashSet<>();
    indexes(steps.get(step)).forEach(others::add);
    if (step > 0) {
      indexes(steps.get(step - 1))
          .filter(i -> session.entries().get(i).stays())
          .forEach(others::add);
    }
    if (step + 1 < steps.size() && session.entries().get(entry).stays()) {
      indexes(steps.get(step + 1)).forEach(others::add);
    }
    others.remove(entry);
    return others;
  }

  private boolean holds(int step, int entry) {
    return indexes(steps.get(step)).anyMatch(i -> i == entry);
  }

  /** The moves that lead to a step: from the one before it, or from the empty rack. */
  public Moves moves(int step) {
    return Moves.between(step == 0 ? Patch.EMPTY : patches.get(step - 1), patches.get(step));
  }

  /** How many moves there are in all. */
  public int moves() {
    return IntStream.range(0, steps.size()).map(step -> moves(step).count()).sum();
  }

  /** What orders of the steps cost. */
  FewestMoves.Cost cost() {
    return new FewestMoves.Cost() {
      @Override
      public long first(int step) {
        return Moves.between(Patch.EMPTY, patches.get(step)).count();
      }

      @Override
      public long between(int before, int after) {
        return Moves.between(patches.get(before), patches.get(after)).count()
            + CLASH * overlapping(before, after).size();
      }
    };
  }

  /**
   * The order with the fewest clashes, and of those with the fewest moves; fixed steps keep their
   * places.
   */
  public Better better() {
    Set<Integer> fixed = new HashSet<>();
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).fixed()) {
        fixed.add(i);
      }
    }
    FewestMoves.Cost cost = cost();
    FewestMoves.Order order = FewestMoves.of(steps.size(), cost, fixed);
    long now = cost.of(IntStream.range(0, steps.size()).boxed().toList());
    long best = Math.min(order.cost(), now);
    return new Better(
        order.cost() < now ? order.steps() : null,
        (int) (best % CLASH),
        (int) (best / CLASH),
        (int) (now / CLASH),
        order.exact());
  }

  /**
   * An order that is better than the one at hand.
   *
   * @param order numbers of {@link #steps}; null: there is none, or none was found
   * @param moves in the better order, or in this one
   * @param clashes of neighbours in it
   * @param clashesNow of neighbours in this one
   * @param exact whether nothing is better still; if not, it is the best one that was found
   */
  public record Better(
      @Nullable List<Integer> order, int moves, int clashes, int clashesNow, boolean exact) {
    public Better {
      order = order == null ? null : List.copyOf(order);
    }

    /** The better order, if there is one. */
    public Optional<List<Integer>> found() {
      return Optional.ofNullable(order);
    }
  }

  private static IntStream indexes(Session.Step step) {
    return IntStream.range(step.first(), step.first() + step.entries().size());
  }

  /** The recipes of a step, without those that are missing. */
  public List<Recipe> recipes(Session.Step step) {
    return indexes(step).mapToObj(recipes::get).flatMap(Optional::stream).toList();
  }
}
