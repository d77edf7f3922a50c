package thudbook.storage;

import static thudbook.storage.schema.Tables.BINNING;
import static thudbook.storage.schema.Tables.CHANGE;
import static thudbook.storage.schema.Tables.DOCUMENT;
import static thudbook.storage.schema.Tables.DOCUMENT_REVISION;
import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_REVISION;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_REVISION;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.documents.Documents;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Act;
import thudbook.recipes.Act.Binning;
import thudbook.recipes.Act.GateWrite;
import thudbook.recipes.Act.Noun;
import thudbook.recipes.Act.PlainWrite;
import thudbook.recipes.Act.RecipeWrite;
import thudbook.recipes.Change;
import thudbook.recipes.Change.Effect;
import thudbook.recipes.Change.Kind;
import thudbook.recipes.Recipe;
import thudbook.storage.schema.tables.DocumentRevision;
import thudbook.storage.schema.tables.GateRevision;
import thudbook.storage.schema.tables.RecipeRevision;

/** What acts did, and what would undo them. */
final class ChangeHistory {
  private static final RecipeRevision RECIPE_HEAD = RECIPE_REVISION.as("recipe_head");
  private static final GateRevision GATE_HEAD = GATE_REVISION.as("gate_head");
  private static final DocumentRevision DOCUMENT_HEAD = DOCUMENT_REVISION.as("document_head");
  private static final String STANDS = "stands";

  private final DSLContext db;
  private final long change;

  private ChangeHistory(DSLContext db, long change) {
    this.db = db;
    this.change = change;
  }

  /** A change with its effects. */
  static Optional<Change> find(DSLContext db, long id) {
    return db.selectFrom(CHANGE)
        .where(CHANGE.ID.eq(id))
        .fetchOptional()
        .map(
            row -> {
              List<Effect> effects = new ChangeHistory(db, id).effects();
              return new Change(
                  id,
                  Instant.ofEpochMilli(row.getAt()),
                  new Author(row.getAuthor()),
                  row.getWhat(),
                  row.getUndoneBy(),
                  effects.subList(0, Math.min(effects.size(), Change.MOST_EFFECTS)),
                  effects.size());
            });
  }

  /**
   * The act that undoes a change.
   *
   * @param studio the state of the studio's gates
   */
  static Act undoing(DSLContext db, long id, long studio) {
    Record row =
        db.select(CHANGE.UNDONE_BY)
            .from(CHANGE)
            .where(CHANGE.ID.eq(id))
            .fetchOptional()
            .orElseThrow(
                () ->
                    Refusal.of(
                        Refusal.Kind.NOT_FOUND, "no-such-change", "There is no such change."));
    if (row.get(CHANGE.UNDONE_BY) != null) {
      throw Refusal.of(Refusal.Kind.CONFLICT, "undone-already", "This change was undone already.");
    }
    return new ChangeHistory(db, id).reverse(studio);
  }

  private List<Effect> effects() {
    List<Effect> effects = new ArrayList<>();
    for (Record row : recipeRevisions()) {
      effects.add(
          written(
              Noun.RECIPE,
              row.get(RECIPE.SLUG),
              row.get(RECIPE.TITLE),
              row.get(RECIPE_REVISION.NUMBER)));
    }
    for (Record row : gateRevisions()) {
      effects.add(
          written(
              Noun.GATE, row.get(GATE.SLUG), row.get(GATE.TITLE), row.get(GATE_REVISION.NUMBER)));
    }
    for (Record row : plainRevisions()) {
      effects.add(
          written(
              noun(row),
              row.get(DOCUMENT.SLUG),
              row.get(DOCUMENT.TITLE),
              row.get(DOCUMENT_REVISION.NUMBER)));
    }
    for (Record row : binnings()) {
      Moved moved = Moved.of(row);
      effects.add(
          new Effect(
              moved.noun(),
              moved.slug(),
              moved.title(),
              row.get(BINNING.INTO_BIN) == 1 ? Kind.BINNED : Kind.TAKEN_BACK,
              0));
    }
    return effects;
  }

  private static Effect written(Noun noun, String slug, String title, long number) {
    return new Effect(
        noun, slug, title, number == 1 ? Kind.ADDED : Kind.CHANGED, Math.toIntExact(number));
  }

  private Act reverse(long studio) {
    List<GateWrite> gates = new ArrayList<>();
    List<RecipeWrite> recipes = new ArrayList<>();
    List<PlainWrite> plain = new ArrayList<>();
    List<Binning> binnings = new ArrayList<>();
    List<Fault> later = new ArrayList<>();
    for (Record row : recipeRevisions()) {
      UUID id = UUID.fromString(row.get(RECIPE.UUID));
      long number = row.get(RECIPE_REVISION.NUMBER);
      boolean first = number == 1;
      if (!row.get(STANDS, Boolean.class) || row.get(RECIPE.BINNED_AT) != null) {
        later.add(changedSince(row.get(RECIPE.SLUG), row.get(RECIPE.TITLE)));
      } else if (first) {
        binnings.add(new Binning(Noun.RECIPE, id, row.get(RECIPE.VERSION), true));
      } else {
        recipes.add(before(row, number));
      }
    }
    for (Record row : gateRevisions()) {
      UUID id = UUID.fromString(row.get(GATE.UUID));
      long number = row.get(GATE_REVISION.NUMBER);
      if (!row.get(STANDS, Boolean.class) || row.get(GATE.BINNED_AT) != null) {
        later.add(changedSince(row.get(GATE.SLUG), row.get(GATE.TITLE)));
      } else if (number == 1) {
        binnings.add(new Binning(Noun.GATE, id, row.get(GATE.VERSION), true));
      } else {
        String text =
            db.select(GATE_REVISION.DOCUMENT)
                .from(GATE_REVISION)
                .where(GATE_REVISION.GATE.eq(row.get(GATE.ID)), GATE_REVISION.NUMBER.eq(number - 1))
                .fetchSingle()
                .value1();
        gates.add(new GateWrite(StoredText.gate(text), text, row.get(GATE.VERSION)));
      }
    }
    for (Record row : plainRevisions()) {
      UUID id = UUID.fromString(row.get(DOCUMENT.UUID));
      long number = row.get(DOCUMENT_REVISION.NUMBER);
      String slug = row.get(DOCUMENT.SLUG);
      String title = row.get(DOCUMENT.TITLE);
      long version = row.get(DOCUMENT.VERSION);
      if (!row.get(STANDS, Boolean.class) || row.get(DOCUMENT.BINNED_AT) != null) {
        later.add(changedSince(slug, title));
      } else if (number == 1) {
        binnings.add(new Binning(noun(row), id, version, true));
      } else {
        plain.add(before(noun(row), row.get(DOCUMENT.ID), id, number, version));
      }
    }
    for (Record row : binnings()) {
      Moved moved = Moved.of(row);
      boolean intoBin = row.get(BINNING.INTO_BIN) == 1;
      if ((moved.binnedAt() != null) != intoBin) {
        later.add(changedSince(moved.slug(), moved.title()));
        continue;
      }
      binnings.add(new Binning(moved.noun(), moved.id(), moved.version(), !intoBin));
    }
    if (!later.isEmpty()) {
      throw new Refusal(Refusal.Kind.CONFLICT, later);
    }
    return new Act(gates, recipes, plain, binnings, studio, change);
  }

  /** The state of a recipe before a revision, to be written again. */
  private RecipeWrite before(Record row, long number) {
    String text =
        db.select(RECIPE_REVISION.DOCUMENT)
            .from(RECIPE_REVISION)
            .where(
                RECIPE_REVISION.RECIPE.eq(row.get(RECIPE.ID)),
                RECIPE_REVISION.NUMBER.eq(number - 1))
            .fetchSingle()
            .value1();
    Recipe recipe = StoredText.recipe(text);
    return recipe.soundsAs(StoredText.recipe(row.get(RECIPE_REVISION.DOCUMENT)))
        ? RecipeWrite.ofSameSound(recipe, text, row.get(RECIPE.VERSION))
        : new RecipeWrite(recipe, text, row.get(RECIPE.VERSION), null);
  }

  /**
   * Whether what a change wrote is what stands today, perhaps because what came later was undone.
   */
  private static Field<Boolean> stands(Field<String> written, Field<String> head) {
    return DSL.field(written.eq(head)).as(STANDS);
  }

  private static Fault changedSince(String slug, String title) {
    return new Fault(
        "",
        0,
        "changed-since",
        slug,
        "",
        title + " was changed or binned since: undo that first, or go back in its history.");
  }

  private List<? extends Record> recipeRevisions() {
    return db.select(
            RECIPE.ID,
            RECIPE.UUID,
            RECIPE.SLUG,
            RECIPE.TITLE,
            RECIPE.VERSION,
            RECIPE.BINNED_AT,
            RECIPE_REVISION.NUMBER,
            RECIPE_REVISION.DOCUMENT,
            stands(RECIPE_REVISION.SHA256, RECIPE_HEAD.SHA256))
        .from(RECIPE_REVISION)
        .join(RECIPE)
        .on(RECIPE.ID.eq(RECIPE_REVISION.RECIPE))
        .join(RECIPE_HEAD)
        .on(RECIPE_HEAD.RECIPE.eq(RECIPE.ID), RECIPE_HEAD.NUMBER.eq(RECIPE.HEAD))
        .where(RECIPE_REVISION.CHANGE.eq(change))
        .orderBy(RECIPE_REVISION.ID)
        .fetch();
  }

  private List<? extends Record> gateRevisions() {
    return db.select(
            GATE.ID,
            GATE.UUID,
            GATE.SLUG,
            GATE.TITLE,
            GATE.VERSION,
            GATE.BINNED_AT,
            GATE_REVISION.NUMBER,
            stands(GATE_REVISION.SHA256, GATE_HEAD.SHA256))
        .from(GATE_REVISION)
        .join(GATE)
        .on(GATE.ID.eq(GATE_REVISION.GATE))
        .join(GATE_HEAD)
        .on(GATE_HEAD.GATE.eq(GATE.ID), GATE_HEAD.NUMBER.eq(GATE.HEAD))
        .where(GATE_REVISION.CHANGE.eq(change))
        .orderBy(GATE_REVISION.ID)
        .fetch();
  }

  /** The state of a document before a revision, to be written again. */
  private PlainWrite before(Noun noun, long document, UUID id, long number, long version) {
    String text =
        db.select(DOCUMENT_REVISION.TEXT)
            .from(DOCUMENT_REVISION)
            .where(DOCUMENT_REVISION.DOCUMENT.eq(document), DOCUMENT_REVISION.NUMBER.eq(number - 1))
            .fetchSingle()
            .value1();
    Documents.Noun was = StoredText.read(text);
    return new PlainWrite(noun, id, was.slug(), was.title(), text, version);
  }

  private static Noun noun(Record row) {
    return Noun.valueOf(row.get(DOCUMENT.NOUN).toUpperCase(Locale.ROOT));
  }

  private List<? extends Record> plainRevisions() {
    return db.select(
            DOCUMENT.ID,
            DOCUMENT.NOUN,
            DOCUMENT.UUID,
            DOCUMENT.SLUG,
            DOCUMENT.TITLE,
            DOCUMENT.VERSION,
            DOCUMENT.BINNED_AT,
            DOCUMENT_REVISION.NUMBER,
            stands(DOCUMENT_REVISION.SHA256, DOCUMENT_HEAD.SHA256))
        .from(DOCUMENT_REVISION)
        .join(DOCUMENT)
        .on(DOCUMENT.ID.eq(DOCUMENT_REVISION.DOCUMENT))
        .join(DOCUMENT_HEAD)
        .on(DOCUMENT_HEAD.DOCUMENT.eq(DOCUMENT.ID), DOCUMENT_HEAD.NUMBER.eq(DOCUMENT.HEAD))
        .where(DOCUMENT_REVISION.CHANGE.eq(change))
        .orderBy(DOCUMENT_REVISION.ID)
        .fetch();
  }

  /** What went into the bin or came out of it, as it is today. */
  private record Moved(
      Noun noun, UUID id, String slug, String title, long version, @Nullable Long binnedAt) {
    static Moved of(Record row) {
      if (row.get(BINNING.RECIPE) != null) {
        return new Moved(
            Noun.RECIPE,
            UUID.fromString(row.get(RECIPE.UUID)),
            row.get(RECIPE.SLUG),
            row.get(RECIPE.TITLE),
            row.get(RECIPE.VERSION),
            row.get(RECIPE.BINNED_AT));
      } else if (row.get(BINNING.GATE) != null) {
        return new Moved(
            Noun.GATE,
            UUID.fromString(row.get(GATE.UUID)),
            row.get(GATE.SLUG),
            row.get(GATE.TITLE),
            row.get(GATE.VERSION),
            row.get(GATE.BINNED_AT));
      }
      return new Moved(
          ChangeHistory.noun(row),
          UUID.fromString(row.get(DOCUMENT.UUID)),
          row.get(DOCUMENT.SLUG),
          row.get(DOCUMENT.TITLE),
          row.get(DOCUMENT.VERSION),
          row.get(DOCUMENT.BINNED_AT));
    }
  }

  private List<? extends Record> binnings() {
    return db.select(
            BINNING.RECIPE,
            BINNING.GATE,
            BINNING.DOCUMENT,
            DOCUMENT.NOUN,
            DOCUMENT.UUID,
            DOCUMENT.SLUG,
            DOCUMENT.TITLE,
            DOCUMENT.VERSION,
            DOCUMENT.BINNED_AT,
            BINNING.INTO_BIN,
            RECIPE.UUID,
            RECIPE.SLUG,
            RECIPE.TITLE,
            RECIPE.VERSION,
            RECIPE.BINNED_AT,
            GATE.UUID,
            GATE.SLUG,
            GATE.TITLE,
            GATE.VERSION,
            GATE.BINNED_AT)
        .from(BINNING)
        .leftJoin(RECIPE)
        .on(RECIPE.ID.eq(BINNING.RECIPE))
        .leftJoin(GATE)
        .on(GATE.ID.eq(BINNING.GATE))
        .leftJoin(DOCUMENT)
        .on(DOCUMENT.ID.eq(BINNING.DOCUMENT))
        .where(BINNING.CHANGE.eq(change))
        .orderBy(BINNING.ID)
        .fetch();
  }
}
