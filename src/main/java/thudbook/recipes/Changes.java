package thudbook.recipes;

import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import thudbook.access.Author;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Act.Binning;
import thudbook.recipes.Act.GateWrite;

/** What was done, and undoing it. */
public final class Changes {
  private final ChangeStore store;
  private final RecipeStore recipes;
  private final GateStore studio;
  private final Predicting predicting;
  private final InstantSource clock;
  private final Runnable afterwards;

  /**
   * The acts of a notebook.
   *
   * @param afterwards what follows a change of a gate: the predictions are remade
   */
  public Changes(
      ChangeStore store,
      RecipeStore recipes,
      GateStore studio,
      InstantSource clock,
      Runnable afterwards) {
    this.store = store;
    this.recipes = recipes;
    this.studio = studio;
    this.predicting = new Predicting(store, studio);
    this.clock = clock;
    this.afterwards = afterwards;
  }

  /** A change by its number. */
  public Optional<Change> find(long id) {
    return store.find(id);
  }

  /** The latest changes, newest first. */
  public List<Change> newest(int limit) {
    return store.newest(limit);
  }

  /**
   * Undoes a change, as a change of its own that can be undone too.
   *
   * @return the number of the new change
   * @throws Refusal of kind NOT_FOUND, or CONFLICT with everything that stands in the way: it was
   *     undone before, something of it was changed since, a gate that it added is in use
   */
  public long undo(long id, Author author) {
    String what = store.find(id).map(Change::what).orElse("");
    Act reverse = reverse(id);
    Act act =
        predicting
            .act(reverse.gates(), reverse.recipes(), reverse.binnings(), reverse.undoes())
            .with(reverse.plain());
    long change = store.write(act, author, clock.instant(), "undid: " + what);
    if (!act.gates().isEmpty() || !act.binnings().isEmpty()) {
      afterwards.run();
    }
    return change;
  }

  /** What stands in the way of undoing a change; none: it can be undone. */
  public List<Fault> obstacles(long id) {
    try {
      reverse(id);
      return List.of();
    } catch (Refusal refusal) {
      return refusal.faults();
    }
  }

  private Act reverse(long id) {
    Act reverse = store.undoing(id);
    Set<String> leaving = leaving(reverse);
    for (Binning binning : reverse.binnings()) {
      if (binning.noun() == Act.Noun.GATE && binning.intoBin()) {
        Gates.refuseUsed(recipes, gate(binning.id()), null, leaving);
      }
    }
    for (GateWrite write : reverse.gates()) {
      Gates.refuseUsed(recipes, gate(write.gate().id()), write.gate(), leaving);
    }
    return reverse;
  }

  /** Recipes that go into the bin with their gate do not hold it. */
  private Set<String> leaving(Act reverse) {
    return reverse.binnings().stream()
        .filter(binning -> binning.noun() == Act.Noun.RECIPE && binning.intoBin())
        .map(binning -> recipes.find(binning.id().toString()).orElseThrow().recipe().slug())
        .collect(Collectors.toSet());
  }

  private Gate gate(UUID id) {
    return studio.find(id.toString()).orElseThrow().gate();
  }
}
