package thudbook.storage;

import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_SLUG;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_SLUG;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jooq.DSLContext;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.RecipeStore.NewGate;
import thudbook.recipes.RecipeStore.NewRecipe;

/** Ids and slugs that are taken, by what is stored or by what comes with them. */
final class Clashes {
  private final List<Fault> faults = new ArrayList<>();
  private final Set<String> seen = new HashSet<>();

  private Clashes() {}

  /**
   * Refuses what can't be added beside what is stored.
   *
   * @throws Refusal with a fault for every id and slug that is taken
   */
  static void refuse(DSLContext db, List<NewGate> gates, List<NewRecipe> recipes) {
    Clashes clashes = new Clashes();
    for (NewGate added : gates) {
      UUID id = added.gate().id();
      String slug = added.gate().slug();
      clashes.check("gate", "id", id.toString(), db.fetchExists(GATE, GATE.UUID.eq(id.toString())));
      clashes.check("gate", "slug", slug, db.fetchExists(GATE_SLUG, GATE_SLUG.SLUG.eq(slug)));
    }
    for (NewRecipe added : recipes) {
      String id = added.recipe().id().toString();
      String slug = added.recipe().slug();
      clashes.check("recipe", "id", id, db.fetchExists(RECIPE, RECIPE.UUID.eq(id)));
      clashes.check("recipe", "slug", slug, db.fetchExists(RECIPE_SLUG, RECIPE_SLUG.SLUG.eq(slug)));
    }
    if (!clashes.faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.CONFLICT, clashes.faults);
    }
  }

  private void check(String noun, String key, String value, boolean stored) {
    if (!seen.add(noun + ' ' + key + ' ' + value) || stored) {
      faults.add(
          new Fault(
              "/" + key,
              0,
              key + "-taken",
              value,
              "one that no other " + noun + " has",
              "The " + key + " " + value + " is taken by another " + noun + "."));
    }
  }
}
