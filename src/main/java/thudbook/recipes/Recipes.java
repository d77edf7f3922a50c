package thudbook.recipes;

import java.time.InstantSource;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.equipment.GateStore;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Act.Binning;
import thudbook.recipes.Act.GateWrite;
import thudbook.recipes.Act.PlainWrite;
import thudbook.recipes.Act.RecipeWrite;

/**
 * What can be done with recipes: each act is one change, and what it writes is predicted. All of
 * them return the number of the change, under which it can be looked up and undone.
 */
public final class Recipes {
  private final ChangeStore changes;
  private final RecipeStore store;
  private final Predicting predicting;
  private final InstantSource clock;
  private final Runnable afterwards;

  /**
   * Acts on the recipes of a notebook.
   *
   * @param afterwards what follows an act: predictions that a gate has overtaken are remade
   */
  public Recipes(
      ChangeStore changes,
      RecipeStore store,
      GateStore studio,
      InstantSource clock,
      Runnable afterwards) {
    this.changes = changes;
    this.store = store;
    this.predicting = new Predicting(changes, studio);
    this.clock = clock;
    this.afterwards = afterwards;
  }

  /**
   * A recipe with its canonical text.
   *
   * @param document what is kept
   */
  public record Written(Recipe recipe, String document) {}

  /**
   * Loads the sample library into a notebook in which nothing was ever written: once, and not again
   * when its recipes were thrown away.
   *
   * @return whether it was loaded
   * @throws Refusal if two of the samples have the same id or slug
   */
  public boolean loadSamples(
      List<Gates.Written> gates, List<Written> recipes, List<PlainWrite> others) {
    if (!changes.isEmpty()) {
      return false;
    }
    write(
        gates.stream().map(gate -> new GateWrite(gate.gate(), gate.document(), null)).toList(),
        recipes.stream()
            .map(written -> new RecipeWrite(written.recipe(), written.document(), null, null))
            .toList(),
        others,
        Author.SAMPLES,
        "loaded the sample library");
    return true;
  }

  /**
   * Adds gates and recipes in one change, all or nothing. The recipes may use the gates that come
   * with them.
   *
   * @param what the act in words
   * @throws Refusal of kind CONFLICT with every id and slug that is taken
   */
  public long add(List<Gates.Written> gates, List<Written> recipes, Author author, String what) {
    return write(
        gates.stream().map(gate -> new GateWrite(gate.gate(), gate.document(), null)).toList(),
        recipes.stream()
            .map(written -> new RecipeWrite(written.recipe(), written.document(), null, null))
            .toList(),
        author,
        what);
  }

  /**
   * Adds and changes gates and recipes in one change, all or nothing. Predictions of the recipes
   * need not be given.
   *
   * @throws Refusal of kind CONFLICT or STALE with everything that is in the way
   */
  public long write(List<GateWrite> gates, List<RecipeWrite> recipes, Author author, String what) {
    return write(gates, recipes, List.of(), author, what);
  }

  /**
   * Adds and changes gates, recipes and plain documents in one change, all or nothing.
   *
   * @throws Refusal of kind CONFLICT or STALE with everything that is in the way
   */
  public long write(
      List<GateWrite> gates,
      List<RecipeWrite> recipes,
      List<PlainWrite> others,
      Author author,
      String what) {
    return done(predicting.act(gates, recipes, List.of()).with(others), author, what);
  }

  /**
   * Adds a recipe.
   *
   * @throws Refusal of kind CONFLICT if its id or slug is taken
   */
  public long create(Written written, Author author, String what) {
    return add(List.of(), List.of(written), author, what);
  }

  /**
   * Saves a new revision. A slug that differs renames the recipe; the old one goes on to lead to
   * it. A text that is the same as before makes no revision.
   *
   * @param version the version that the author saw
   * @param what what is different, in words
   * @throws Refusal of kind NOT_FOUND, STALE if the recipe has another version by now, or CONFLICT
   *     if it is in the bin or the slug is taken
   */
  public long change(UUID id, long version, Written written, Author author, String what) {
    RecipeStore.Stored stored = standing(id);
    if (!written.recipe().id().equals(id)) {
      throw new IllegalArgumentException("another recipe than " + id + ": " + written.recipe());
    }
    if (stored.version() == version && stored.document().equals(written.document())) {
      return store.revision(id, stored.revision()).orElseThrow().change();
    }
    return write(
        List.of(),
        List.of(new RecipeWrite(written.recipe(), written.document(), version, null)),
        author,
        what);
  }

  /**
   * Makes an earlier revision the newest one, as a revision of its own. The slug of today stays.
   *
   * @param document writes the canonical text of a recipe
   * @throws Refusal of kind NOT_FOUND, STALE or CONFLICT
   */
  public long restore(
      UUID id, long version, int revision, Author author, Function<Recipe, String> document) {
    RecipeStore.Stored stored = standing(id);
    Revision<Recipe> earlier =
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
                            + stored.recipe().title()
                            + "."));
    Recipe recipe = earlier.noun().withSlug(stored.recipe().slug());
    return change(
        id,
        version,
        new Written(recipe, document.apply(recipe)),
        author,
        "went back to revision " + revision);
  }

  /**
   * Throws recipes into the bin.
   *
   * @param ids each once
   * @throws Refusal of kind NOT_FOUND or CONFLICT with each that is not there or in the bin already
   */
  public long bin(List<UUID> ids, Author author) {
    return move(ids, true, author);
  }

  /**
   * Throws a recipe into the bin, if it still has the version that the author saw.
   *
   * @throws Refusal of kind NOT_FOUND, STALE or CONFLICT
   */
  public long bin(UUID id, long version, Author author) {
    RecipeStore.Stored stored = standing(id);
    return done(
        predicting.act(
            List.of(), List.of(), List.of(new Binning(Act.Noun.RECIPE, id, version, true))),
        author,
        "threw " + stored.recipe().title() + " into the bin");
  }

  /**
   * Takes recipes out of the bin.
   *
   * @throws Refusal of kind NOT_FOUND or CONFLICT with each that is not in the bin
   */
  public long unbin(List<UUID> ids, Author author) {
    return move(ids, false, author);
  }

  private long move(List<UUID> ids, boolean intoBin, Author author) {
    List<Binning> binnings = new ArrayList<>();
    List<String> titles = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    for (UUID id : new LinkedHashSet<>(ids)) {
      RecipeStore.Stored stored = store.find(id.toString()).orElse(null);
      if (stored == null) {
        faults.add(fault("no-such-recipe", id.toString(), "There is no recipe " + id + "."));
      } else if ((stored.binnedAt() != null) == intoBin) {
        String where = intoBin ? " is in the bin already." : " is not in the bin.";
        faults.add(fault("not-there", id.toString(), stored.recipe().title() + where));
      } else {
        binnings.add(new Binning(Act.Noun.RECIPE, id, stored.version(), intoBin));
        titles.add(stored.recipe().title());
      }
    }
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.CONFLICT, faults);
    }
    String which = titles.size() == 1 ? titles.get(0) : titles.size() + " recipes";
    return done(
        predicting.act(List.of(), List.of(), binnings),
        author,
        intoBin ? "threw " + which + " into the bin" : "took " + which + " out of the bin");
  }

  private long done(Act act, Author author, String what) {
    long change = changes.write(act, author, clock.instant(), what);
    afterwards.run();
    return change;
  }

  private RecipeStore.Stored standing(UUID id) {
    RecipeStore.Stored stored =
        store
            .find(id.toString())
            .orElseThrow(
                () ->
                    Refusal.of(
                        Refusal.Kind.NOT_FOUND, "no-such-recipe", "There is no such recipe."));
    if (stored.binnedAt() != null) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT,
          "in-bin",
          stored.recipe().title() + " is in the bin: take it out first.");
    }
    return stored;
  }

  private static Fault fault(String code, String found, String message) {
    return new Fault("", 0, code, found, "", message);
  }
}
