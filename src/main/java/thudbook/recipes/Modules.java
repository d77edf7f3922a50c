package thudbook.recipes;

import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.equipment.Module;
import thudbook.equipment.ModuleStore;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Act.Binning;
import thudbook.recipes.Act.PlainWrite;

/** What can be done with modules: each act is one change, which can be undone. */
public final class Modules {
  private final ChangeStore changes;
  private final ModuleStore store;
  private final InstantSource clock;

  /** Acts on the modules of a notebook. */
  public Modules(ChangeStore changes, ModuleStore store, InstantSource clock) {
    this.changes = changes;
    this.store = store;
    this.clock = clock;
  }

  /**
   * A module with its canonical text.
   *
   * @param document what is kept
   */
  public record Written(Module module, String document) {
    /**
     * What an act writes.
     *
     * @param version the version that is changed; null: it is new
     */
    public PlainWrite write(@Nullable Long version) {
      return new PlainWrite(
          Act.Noun.MODULE, module.id(), module.slug(), module.title(), document, version);
    }
  }

  /**
   * Adds a module.
   *
   * @throws Refusal of kind CONFLICT if its id, slug or label is taken
   */
  public long create(Written written, Author author, String what) {
    refuseTakenLabel(written.module());
    return done(List.of(written.write(null)), List.of(), author, what);
  }

  /**
   * Saves a new revision. A text that is the same as before makes none.
   *
   * @param version the version that the author saw
   * @throws Refusal of kind NOT_FOUND, STALE if it has another version by now, or CONFLICT if it is
   *     in the bin or its slug or label is taken
   */
  public long change(UUID id, long version, Written written, Author author, String what) {
    ModuleStore.Stored stored = standing(id);
    refuseTakenLabel(written.module());
    if (!written.module().id().equals(id)) {
      throw new IllegalArgumentException("another module than " + id + ": " + written.module());
    }
    if (stored.version() == version && stored.document().equals(written.document())) {
      return store.revision(id, stored.revision()).orElseThrow().change();
    }
    return done(List.of(written.write(version)), List.of(), author, what);
  }

  /**
   * Makes an earlier revision the newest one, as a revision of its own. The slug of today stays.
   *
   * @param document writes the canonical text of a module
   * @throws Refusal of kind NOT_FOUND, STALE or CONFLICT
   */
  public long restore(
      UUID id, long version, int revision, Author author, Function<Module, String> document) {
    ModuleStore.Stored stored = standing(id);
    Revision<Module> earlier =
        store
            .revision(id, revision)
            .orElseThrow(
                () ->
                    Refusal.of(
                        Refusal.Kind.NOT_FOUND,
                        "no-such-revision",
                        "There is no revision "
                            + revision
                            + " of "
                            + stored.module().title()
                            + "."));
    Module module = earlier.noun().withSlug(stored.module().slug());
    return change(
        id,
        version,
        new Written(module, document.apply(module)),
        author,
        "went back to revision " + revision);
  }

  /**
   * Throws a module into the bin.
   *
   * @throws Refusal of kind NOT_FOUND, STALE or CONFLICT
   */
  public long bin(UUID id, long version, Author author) {
    ModuleStore.Stored stored = standing(id);
    return move(id, version, true, author, "threw " + stored.module().title() + " into the bin");
  }

  /**
   * Takes a module out of the bin.
   *
   * @throws Refusal of kind NOT_FOUND, or CONFLICT if it is not in the bin
   */
  public long unbin(UUID id, Author author) {
    ModuleStore.Stored stored = found(id);
    if (stored.binnedAt() == null) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT, "not-there", stored.module().title() + " is not in the bin.");
    }
    refuseTakenLabel(stored.module());
    String what = "took " + stored.module().title() + " out of the bin";
    return move(id, stored.version(), false, author, what);
  }

  /** The module that has the label of another one, if any: recipes could not tell them apart. */
  public static Optional<Module> sameLabel(ModuleStore store, Module module) {
    return store.rack().module(module.label()).filter(other -> !other.id().equals(module.id()));
  }

  private void refuseTakenLabel(Module module) {
    sameLabel(store, module)
        .ifPresent(
            other -> {
              throw new Refusal(
                  Refusal.Kind.CONFLICT,
                  List.of(
                      new Fault(
                          "/label",
                          0,
                          "label-taken",
                          module.label(),
                          "a label of its own",
                          "The label " + module.label() + " is taken by " + other.title() + ".")));
            });
  }

  private long move(UUID id, long version, boolean intoBin, Author author, String what) {
    Binning binning = new Binning(Act.Noun.MODULE, id, version, intoBin);
    return done(List.of(), List.of(binning), author, what);
  }

  private long done(List<PlainWrite> writes, List<Binning> binnings, Author author, String what) {
    Act act = new Act(List.of(), List.of(), binnings, changes.studio(), null).with(writes);
    return changes.write(act, author, clock.instant(), what);
  }

  private ModuleStore.Stored standing(UUID id) {
    ModuleStore.Stored stored = found(id);
    if (stored.binnedAt() != null) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT,
          "in-bin",
          stored.module().title() + " is in the bin: take it out first.");
    }
    return stored;
  }

  private ModuleStore.Stored found(UUID id) {
    return store
        .find(id.toString())
        .orElseThrow(
            () -> Refusal.of(Refusal.Kind.NOT_FOUND, "no-such-module", "There is no such module."));
  }
}
