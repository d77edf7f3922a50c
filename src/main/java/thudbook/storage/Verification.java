package thudbook.storage;

import static thudbook.storage.schema.Tables.PHOTO;
import static thudbook.storage.schema.Tables.REVISION;
import static thudbook.storage.schema.Tables.THING;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.BiFunction;
import org.jooq.DSLContext;
import org.jooq.SQLDialect;
import org.jooq.conf.Settings;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;
import thudbook.changes.Noun;
import thudbook.changes.Thing;
import thudbook.library.Words;
import thudbook.quantities.Refusal;
import thudbook.storage.keeping.DatabaseFile;
import thudbook.storage.keeping.Schema;
import thudbook.storage.keeping.SchemaComparison;
import thudbook.storage.schema.tables.Revision;

/**
 * Looks at everything in a notebook: pages and references, the tables themselves, the hash of every
 * revision and photo, whether every document reads and its columns follow from it, and whether
 * every prediction that counts is what is predicted today. It reads in short transactions of its
 * own, so that a server may go on meanwhile.
 */
public final class Verification {
  private static final Revision EARLIER = REVISION.as("earlier");

  /** How many rows are looked at in one transaction. */
  static final int BATCH = 200;

  /** Photos are larger, and their number is small. */
  private static final int PHOTO_BATCH = 8;

  private final DSLContext reading;
  private final StoredNouns nouns;
  private final List<String> wrong = new ArrayList<>();
  private long revisions;
  private long photos;

  private Verification(DSLContext reading, StoredNouns nouns) {
    this.reading = reading;
    this.nouns = nouns;
  }

  /**
   * What was looked at, and what is wrong.
   *
   * @param things how many there are of each noun
   * @param wrong one sentence each; empty: nothing
   */
  public record Findings(
      Map<String, Long> things, long revisions, long predictions, long photos, List<String> wrong) {
    public Findings {
      things = Map.copyOf(things);
      wrong = List.copyOf(wrong);
    }

    /** How many things of a noun there are. */
    public long count(Noun<?> noun) {
      return things.getOrDefault(noun.word(), 0L);
    }
  }

  /**
   * Looks at a database file.
   *
   * @throws Refusal if it can't be read, or its tables are not of this version
   */
  static Findings of(Path file) {
    return of(file, StoredNouns.with(List.of()));
  }

  /** The same in a notebook with these nouns. */
  static Findings of(Path file, StoredNouns nouns) {
    try (Connection connection = DatabaseFile.open(file)) {
      SchemaComparison.refuseForeign(file, connection);
      Schema.refuseOther(file, Schema.versionOf(connection));
      List<String> unsound = new ArrayList<>(DatabaseFile.unsound(connection));
      unsound.addAll(SchemaComparison.differences(connection));
      if (!unsound.isEmpty()) {
        return new Findings(Map.of(), 0, 0, 0, unsound);
      }
      Settings settings = new Settings().withRenderSchema(false).withExecuteLogging(false);
      return new Verification(DSL.using(connection, SQLDialect.SQLITE, settings), nouns).findings();
    } catch (SQLException e) {
      throw DatabaseFile.refusal(file, e);
    } catch (DataAccessException e) {
      throw DatabaseFile.explained(file, e);
    }
  }

  private Findings findings() {
    batches(this::revisions);
    Map<String, Long> things = new HashMap<>();
    batches((db, after) -> things(db, after, things));
    VerifiedRecipes recipes = new VerifiedRecipes(wrong);
    batches(recipes::check);
    photos();
    return new Findings(things, revisions, recipes.predictions(), photos, wrong);
  }

  /** Whether the texts have the hashes that were kept with them and with what came after them. */
  private List<Long> revisions(DSLContext db, long after) {
    var rows =
        db.select(
                REVISION.ID,
                REVISION.SHA256,
                REVISION.DOCUMENT,
                REVISION.PARENT,
                EARLIER.SHA256,
                THING.NOUN)
            .from(REVISION)
            .join(THING)
            .on(THING.ID.eq(REVISION.THING))
            .leftJoin(EARLIER)
            .on(EARLIER.THING.eq(REVISION.THING), EARLIER.NUMBER.plus(1L).eq(REVISION.NUMBER))
            .where(REVISION.ID.gt(after))
            .orderBy(REVISION.ID)
            .limit(BATCH)
            .fetch();
    for (var row : rows) {
      revisions++;
      String name = "revision " + row.value1() + " of a " + row.value6() + ": ";
      if (!row.value2().equals(StoredText.sha256(row.value3()))) {
        wrong.add(name + "the text does not have the hash that was kept with it");
      }
      if (!Objects.equals(row.value4(), row.value5())) {
        wrong.add(name + "its parent is not the revision before it");
      }
    }
    return rows.getValues(REVISION.ID);
  }

  /** Whether every document reads, and what is kept of each thing follows from it. */
  private List<Long> things(DSLContext db, long after, Map<String, Long> counts) {
    var rows =
        db.select(
                THING.ID,
                THING.NOUN,
                THING.UUID,
                THING.SLUG,
                THING.TITLE,
                THING.TITLE_KEY,
                REVISION.DOCUMENT)
            .from(THING)
            .leftJoin(REVISION)
            .on(REVISION.THING.eq(THING.ID), REVISION.NUMBER.eq(THING.HEAD))
            .where(THING.ID.gt(after))
            .orderBy(THING.ID)
            .limit(BATCH)
            .fetch();
    for (var row : rows) {
      String noun = row.get(THING.NOUN);
      counts.merge(noun, 1L, Long::sum);
      String name = noun + " " + row.get(THING.SLUG) + ": ";
      try {
        Thing thing = nouns.named(noun).read(row.get(REVISION.DOCUMENT));
        compare(name, "id", row.get(THING.UUID), thing.id().toString());
        compare(name, "slug", row.get(THING.SLUG), thing.slug());
        compare(name, "title", row.get(THING.TITLE), thing.title());
        compare(name, "title to sort by", row.get(THING.TITLE_KEY), Words.fold(thing.title()));
      } catch (Refusal | IllegalStateException e) {
        wrong.add(name + "its document can't be read: " + e.getMessage());
      }
    }
    return rows.getValues(THING.ID);
  }

  private void compare(String name, String what, String kept, String written) {
    if (!kept.equals(written)) {
      wrong.add(name + "its " + what + " is kept as " + kept + ", the document says " + written);
    }
  }

  private void photos() {
    String after = "";
    while (true) {
      String from = after;
      var rows =
          reading.transactionResult(
              transaction ->
                  transaction
                      .dsl()
                      .select(PHOTO.SHA256, PHOTO.BYTES)
                      .from(PHOTO)
                      .where(PHOTO.SHA256.gt(from))
                      .orderBy(PHOTO.SHA256)
                      .limit(PHOTO_BATCH)
                      .fetch());
      if (rows.isEmpty()) {
        return;
      }
      for (var row : rows) {
        photos++;
        if (!row.value1().equals(StoredText.sha256(row.value2()))) {
          wrong.add("photo " + row.value1() + ": its bytes do not have the hash that names it");
        }
      }
      after = rows.get(rows.size() - 1).value1();
    }
  }

  /**
   * Works through a table in short transactions.
   *
   * @param work looks at the rows behind a key and returns their keys in order
   */
  private void batches(BiFunction<DSLContext, Long, List<Long>> work) {
    long after = 0;
    while (true) {
      long from = after;
      List<Long> keys =
          reading.transactionResult(transaction -> work.apply(transaction.dsl(), from));
      if (keys.size() < BATCH) {
        return;
      }
      after = keys.get(keys.size() - 1);
    }
  }
}
