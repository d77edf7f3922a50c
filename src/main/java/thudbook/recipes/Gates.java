package thudbook.recipes;

import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.equipment.Gate;
import thudbook.equipment.GateHistory;
import thudbook.equipment.GateStore;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Act.Binning;
import thudbook.recipes.Act.GateWrite;

/**
 * What can be done with the studio's gates. Recipes that use a gate are marked with it and
 * predicted again in the background; what they use can't be taken away from them. All acts return
 * the number of the change.
 */
public final class Gates {
  private final ChangeStore changes;
  private final RecipeStore recipes;
  private final GateHistory studio;
  private final InstantSource clock;
  private final Runnable afterwards;

  /**
   * Acts on the gates of a notebook.
   *
   * @param afterwards what follows a change of a gate: the predictions are remade
   */
  public Gates(
      ChangeStore changes,
      RecipeStore recipes,
      GateHistory studio,
      InstantSource clock,
      Runnable afterwards) {
    this.changes = changes;
    this.recipes = recipes;
    this.studio = studio;
    this.clock = clock;
    this.afterwards = afterwards;
  }

  /**
   * A gate with its canonical text.
   *
   * @param document what is kept
   */
  public record Written(Gate gate, String document) {}

  /**
   * Adds a gate.
   *
   * @throws Refusal of kind CONFLICT if its id or slug is taken
   */
  public long create(Written written, Author author, String what) {
    return write(new GateWrite(written.gate(), written.document(), null), author, what);
  }

  /**
   * Saves a new revision. A slug that differs renames the gate; recipes that use the old one still
   * find it. A text that is the same as before makes no revision.
   *
   * @param version the version that the author saw
   * @throws Refusal of kind NOT_FOUND, STALE if the gate has another version by now, or CONFLICT if
   *     it is in the bin, the slug is taken, or a channel is gone that recipes use
   */
  public long change(UUID id, long version, Written written, Author author, String what) {
    GateStore.Stored stored = standing(id);
    if (!written.gate().id().equals(id)) {
      throw new IllegalArgumentException("another gate than " + id + ": " + written.gate());
    }
    if (stored.version() == version && stored.document().equals(written.document())) {
      return studio.revision(id, stored.revision()).orElseThrow().change();
    }
    refuseUsed(recipes, stored.gate(), written.gate(), Set.of());
    return write(new GateWrite(written.gate(), written.document(), version), author, what);
  }

  /**
   * Makes an earlier revision the newest one, as a revision of its own. The slug of today stays.
   *
   * @param document writes the canonical text of a gate
   * @throws Refusal of kind NOT_FOUND, STALE or CONFLICT
   */
  public long restore(
      UUID id, long version, int revision, Author author, Function<Gate, String> document) {
    GateStore.Stored stored = standing(id);
    Revision<Gate> earlier =
        studio
            .revision(id, revision)
            .orElseThrow(
                () ->
                    Refusal.of(
                        Refusal.Kind.NOT_FOUND,
                        "no-such-revision",
                        "There is no revision " + revision + " of " + stored.gate().title() + "."));
    Gate gate = earlier.noun().withSlug(stored.gate().slug());
    return change(
        id,
        version,
        new Written(gate, document.apply(gate)),
        author,
        "went back to revision " + revision);
  }

  /**
   * Throws a gate into the bin.
   *
   * @throws Refusal of kind NOT_FOUND, STALE, or CONFLICT with the recipes that use it
   */
  public long bin(UUID id, long version, Author author) {
    GateStore.Stored stored = standing(id);
    refuseUsed(recipes, stored.gate(), null, Set.of());
    return move(stored.gate(), version, true, author, "threw %s into the bin");
  }

  /**
   * Takes a gate out of the bin.
   *
   * @throws Refusal of kind NOT_FOUND, or CONFLICT if it is not in the bin
   */
  public long unbin(UUID id, Author author) {
    GateStore.Stored stored = found(id);
    if (stored.binnedAt() == null) {
      throw conflict("not-there", stored.gate().title() + " is not in the bin.");
    }
    return move(stored.gate(), stored.version(), false, author, "took %s out of the bin");
  }

  /**
   * Refuses to take away from recipes what they use.
   *
   * @param after the gate as it will be; null: it goes into the bin
   * @param leaving slugs of recipes that go into the bin with it
   */
  public static void refuseUsed(
      RecipeStore recipes, Gate before, @Nullable Gate after, Set<String> leaving) {
    Set<String> kept =
        after == null
            ? Set.of()
            : after.channels().stream().map(c -> c.channel().name()).collect(Collectors.toSet());
    List<Fault> faults = new ArrayList<>();
    for (RecipeStore.Use use : recipes.using(before.id())) {
      List<String> lost =
          use.channels().stream()
              .filter(name -> before.channel(name).isPresent() && !kept.contains(name))
              .toList();
      if ((after == null || !lost.isEmpty()) && !leaving.contains(use.slug())) {
        String what =
            after == null
                ? "the gate " + before.title()
                : "the channel " + String.join(" and ", lost) + " of " + before.title();
        faults.add(
            new Fault(
                "/channels", 0, "in-use", use.slug(), "", use.title() + " uses " + what + "."));
      }
    }
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.CONFLICT, faults);
    }
  }

  private long write(GateWrite write, Author author, String what) {
    return done(
        new Act(List.of(write), List.of(), List.of(), changes.studio(), null), author, what);
  }

  private long move(Gate gate, long version, boolean intoBin, Author author, String what) {
    Binning binning = new Binning(Act.Noun.GATE, gate.id(), version, intoBin);
    return done(
        new Act(List.of(), List.of(), List.of(binning), changes.studio(), null),
        author,
        String.format(what, gate.title()));
  }

  private long done(Act act, Author author, String what) {
    long change = changes.write(act, author, clock.instant(), what);
    afterwards.run();
    return change;
  }

  private GateStore.Stored standing(UUID id) {
    GateStore.Stored stored = found(id);
    if (stored.binnedAt() != null) {
      throw conflict("in-bin", stored.gate().title() + " is in the bin: take it out first.");
    }
    return stored;
  }

  private GateStore.Stored found(UUID id) {
    return studio
        .find(id.toString())
        .orElseThrow(
            () -> Refusal.of(Refusal.Kind.NOT_FOUND, "no-such-gate", "There is no such gate."));
  }

  private static Refusal conflict(String code, String message) {
    return Refusal.of(Refusal.Kind.CONFLICT, code, message);
  }
}
