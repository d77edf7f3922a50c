package thudbook.storage;

import static thudbook.storage.schema.Tables.DOCUMENT;
import static thudbook.storage.schema.Tables.DOCUMENT_SLUG;
import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_SLUG;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_SLUG;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jooq.DSLContext;
import org.jspecify.annotations.Nullable;
import thudbook.documents.Slugs;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Act;
import thudbook.recipes.Act.GateWrite;
import thudbook.recipes.Act.PlainWrite;
import thudbook.recipes.Act.RecipeWrite;

/** Ids and slugs that are taken, by what is stored or by what comes with them. */
final class Clashes {
  private final List<Fault> faults = new ArrayList<>();
  private final Set<String> seen = new HashSet<>();

  private Clashes() {}

  /**
   * Refuses what can't be written beside what is stored.
   *
   * @throws Refusal with a fault for every id and slug that is taken
   */
  static void refuse(DSLContext db, Act act) {
    Clashes clashes = new Clashes();
    for (GateWrite write : act.gates()) {
      String id = write.gate().id().toString();
      String slug = write.gate().slug();
      boolean isNew = write.version() == null;
      clashes.check("gate", "id", id, isNew && db.fetchExists(GATE, GATE.UUID.eq(id)));
      clashes.slug("gate", slug, isNew, id, gateOf(db, slug));
    }
    for (List<RecipeWrite> writes : Batches.of(act.recipes())) {
      clashes.recipes(db, writes);
    }
    for (PlainWrite write : act.plain()) {
      String noun = write.noun().word();
      String id = write.id().toString();
      boolean isNew = write.version() == null;
      clashes.check(noun, "id", id, isNew && db.fetchExists(DOCUMENT, DOCUMENT.UUID.eq(id)));
      clashes.slug(noun, write.slug(), isNew, id, documentOf(db, noun, write.slug()));
    }
    if (!clashes.faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.CONFLICT, clashes.faults);
    }
  }

  private static @Nullable String gateOf(DSLContext db, String slug) {
    return db.select(GATE.UUID)
        .from(GATE_SLUG)
        .join(GATE)
        .on(GATE.ID.eq(GATE_SLUG.GATE))
        .where(GATE_SLUG.SLUG.eq(slug))
        .fetchOne(GATE.UUID);
  }

  private void recipes(DSLContext db, List<RecipeWrite> writes) {
    Set<String> stored =
        db.select(RECIPE.UUID)
            .from(RECIPE)
            .where(RECIPE.UUID.in(writes.stream().map(w -> w.recipe().id().toString()).toList()))
            .fetchSet(RECIPE.UUID);
    Map<String, String> owners =
        db.select(RECIPE_SLUG.SLUG, RECIPE.UUID)
            .from(RECIPE_SLUG)
            .join(RECIPE)
            .on(RECIPE.ID.eq(RECIPE_SLUG.RECIPE))
            .where(RECIPE_SLUG.SLUG.in(writes.stream().map(w -> w.recipe().slug()).toList()))
            .fetchMap(RECIPE_SLUG.SLUG, RECIPE.UUID);
    for (RecipeWrite write : writes) {
      String id = write.recipe().id().toString();
      String slug = write.recipe().slug();
      boolean isNew = write.version() == null;
      check("recipe", "id", id, isNew && stored.contains(id));
      slug("recipe", slug, isNew, id, owners.get(slug));
    }
  }

  private static @Nullable String documentOf(DSLContext db, String noun, String slug) {
    return db.select(DOCUMENT.UUID)
        .from(DOCUMENT_SLUG)
        .join(DOCUMENT)
        .on(DOCUMENT.ID.eq(DOCUMENT_SLUG.DOCUMENT))
        .where(DOCUMENT_SLUG.NOUN.eq(noun), DOCUMENT_SLUG.SLUG.eq(slug))
        .fetchOne(DOCUMENT.UUID);
  }

  /** A thing that is there already may keep its slug, or go back to an old one of its own. */
  private void slug(String noun, String slug, boolean isNew, String id, @Nullable String owner) {
    if (owner == null && Slugs.isKept(slug)) {
      faults.add(
          new Fault(
              "/slug",
              0,
              "slug-kept",
              slug,
              "another one",
              "The slug " + slug + " leads to the page on which a new " + noun + " is written."));
    } else {
      check(noun, "slug", slug, owner != null && (isNew || !owner.equals(id)));
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
