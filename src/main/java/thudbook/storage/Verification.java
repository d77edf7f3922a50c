package thudbook.storage;

import static thudbook.storage.schema.Tables.DOCUMENT;
import static thudbook.storage.schema.Tables.DOCUMENT_REVISION;
import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_REVISION;
import static thudbook.storage.schema.Tables.PHOTO;
import static thudbook.storage.schema.Tables.RECIPE_REVISION;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record3;
import org.jooq.Result;
import org.jooq.SQLDialect;
import org.jooq.Table;
import org.jooq.conf.Settings;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.quantities.Refusal;

/**
 * Looks at everything in a notebook: pages and references, the tables themselves, the hash of every
 * revision and photo, whether every document reads and its columns follow from it, and whether
 * every prediction that counts is what is predicted today. It reads in short transactions of its
 * own, so that a server may go on meanwhile.
 */
public final class Verification {
  /** How many rows are looked at in one transaction. */
  static final int BATCH = 200;

  /** Photos are larger, and their number is small. */
  private static final int PHOTO_BATCH = 8;

  private final DSLContext reading;
  private final List<String> wrong = new ArrayList<>();
  private long revisions;
  private long photos;

  private Verification(DSLContext reading) {
    this.reading = reading;
  }

  /**
   * What was looked at, and what is wrong.
   *
   * @param wrong one sentence each; empty: nothing
   */
  public record Findings(
      long gates, long recipes, long revisions, long predictions, long photos, List<String> wrong) {
    public Findings {
      wrong = List.copyOf(wrong);
    }
  }

  /**
   * Looks at a database file.
   *
   * @throws Refusal if it can't be read, or its tables are not of this version
   */
  static Findings of(Path file) {
    try (Connection connection = DatabaseFile.open(file)) {
      SchemaComparison.refuseForeign(file, connection);
      Schema.refuseOther(file, Schema.versionOf(connection));
      List<String> unsound = new ArrayList<>(DatabaseFile.unsound(connection));
      unsound.addAll(SchemaComparison.differences(connection));
      if (!unsound.isEmpty()) {
        return new Findings(0, 0, 0, 0, 0, unsound);
      }
      Settings settings = new Settings().withRenderSchema(false).withExecuteLogging(false);
      return new Verification(DSL.using(connection, SQLDialect.SQLITE, settings)).findings();
    } catch (SQLException e) {
      throw DatabaseFile.refusal(file, e);
    } catch (DataAccessException e) {
      throw DatabaseFile.explained(file, e);
    }
  }

  private Findings findings() {
    hashes("gate", GATE_REVISION, GATE_REVISION.ID, GATE_REVISION.SHA256, GATE_REVISION.DOCUMENT);
    hashes(
        "recipe",
        RECIPE_REVISION,
        RECIPE_REVISION.ID,
        RECIPE_REVISION.SHA256,
        RECIPE_REVISION.DOCUMENT);
    hashes(
        "module or session",
        DOCUMENT_REVISION,
        DOCUMENT_REVISION.ID,
        DOCUMENT_REVISION.SHA256,
        DOCUMENT_REVISION.TEXT);
    long gates = gates();
    plain();
    VerifiedRecipes recipes = new VerifiedRecipes(wrong);
    long count = batches(recipes::check);
    photos();
    return new Findings(gates, count, revisions, recipes.predictions(), photos, wrong);
  }

  private void hashes(
      String noun, Table<?> table, Field<Long> id, Field<String> hash, Field<String> document) {
    revisions +=
        batches(
            (db, after) -> {
              Result<Record3<Long, String, String>> rows =
                  db.select(id, hash, document)
                      .from(table)
                      .where(id.gt(after))
                      .orderBy(id)
                      .limit(BATCH)
                      .fetch();
              rows.stream()
                  .filter(row -> !row.value2().equals(StoredText.sha256(row.value3())))
                  .forEach(
                      row ->
                          wrong.add(
                              "revision "
                                  + row.value1()
                                  + " of a "
                                  + noun
                                  + ": the text does not have the hash that was kept with it"));
              return rows.getValues(id);
            });
  }

  private long gates() {
    return batches(
        (db, after) -> {
          var rows =
              db.select(GATE.ID, GATE.UUID, GATE.SLUG, GATE.TITLE, GATE_REVISION.DOCUMENT)
                  .from(GATE)
                  .leftJoin(GATE_REVISION)
                  .on(GATE_REVISION.GATE.eq(GATE.ID), GATE_REVISION.NUMBER.eq(GATE.HEAD))
                  .where(GATE.ID.gt(after))
                  .orderBy(GATE.ID)
                  .limit(BATCH)
                  .fetch();
          for (var row : rows) {
            String name = "gate " + row.get(GATE.SLUG);
            try {
              Gate gate = StoredText.gate(row.get(GATE_REVISION.DOCUMENT));
              if (!gate.id().toString().equals(row.get(GATE.UUID))
                  || !gate.slug().equals(row.get(GATE.SLUG))
                  || !gate.title().equals(row.get(GATE.TITLE))) {
                wrong.add(name + ": its columns do not follow from its document");
              }
            } catch (Refusal | IllegalStateException e) {
              wrong.add(name + ": its document can't be read: " + e.getMessage());
            }
          }
          return rows.getValues(GATE.ID);
        });
  }

  private void plain() {
    batches(
        (db, after) -> {
          var rows =
              db.select(
                      DOCUMENT.ID,
                      DOCUMENT.NOUN,
                      DOCUMENT.UUID,
                      DOCUMENT.SLUG,
                      DOCUMENT.TITLE,
                      DOCUMENT_REVISION.TEXT)
                  .from(DOCUMENT)
                  .leftJoin(DOCUMENT_REVISION)
                  .on(
                      DOCUMENT_REVISION.DOCUMENT.eq(DOCUMENT.ID),
                      DOCUMENT_REVISION.NUMBER.eq(DOCUMENT.HEAD))
                  .where(DOCUMENT.ID.gt(after))
                  .orderBy(DOCUMENT.ID)
                  .limit(BATCH)
                  .fetch();
          for (var row : rows) {
            String name = row.get(DOCUMENT.NOUN) + " " + row.get(DOCUMENT.SLUG);
            try {
              Documents.Noun noun = StoredText.read(row.get(DOCUMENT_REVISION.TEXT));
              if (!noun.word().equals(row.get(DOCUMENT.NOUN))
                  || !noun.id().toString().equals(row.get(DOCUMENT.UUID))
                  || !noun.slug().equals(row.get(DOCUMENT.SLUG))
                  || !noun.title().equals(row.get(DOCUMENT.TITLE))) {
                wrong.add(name + ": its columns do not follow from its document");
              }
            } catch (Refusal | IllegalStateException e) {
              wrong.add(name + ": its document can't be read: " + e.getMessage());
            }
          }
          return rows.getValues(DOCUMENT.ID);
        });
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
   * @return how many rows there were
   */
  private long batches(BiFunction<DSLContext, Long, List<Long>> work) {
    long count = 0;
    long after = 0;
    while (true) {
      long from = after;
      List<Long> keys =
          reading.transactionResult(transaction -> work.apply(transaction.dsl(), from));
      count += keys.size();
      if (keys.size() < BATCH) {
        return count;
      }
      after = keys.get(keys.size() - 1);
    }
  }
}
