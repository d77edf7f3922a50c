package thudbook.storage;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import thudbook.library.Catalogue;
import thudbook.library.CatalogueRow;

/**
 * Keeps a catalogue in step with what the writing connection commits. Triggers of that connection
 * note the recipes that are touched, whoever touches them, so that no statement can forget to; what
 * they note goes with the transaction.
 */
final class CatalogueUpdates {
  private static final String TOUCHED = "SELECT recipe FROM temp.touched_recipe";

  private static final List<String> NOTING =
      List.of(
          "CREATE TEMP TABLE touched_recipe (recipe INTEGER PRIMARY KEY)",
          "CREATE TEMP TRIGGER touched_new AFTER INSERT ON main.thing"
              + " WHEN new.noun = 'recipe' BEGIN"
              + " INSERT OR IGNORE INTO touched_recipe VALUES (new.id); END",
          "CREATE TEMP TRIGGER touched_recipe_row AFTER UPDATE ON main.thing"
              + " WHEN new.noun = 'recipe' BEGIN"
              + " INSERT OR IGNORE INTO touched_recipe VALUES (new.id); END",
          // Marking a prediction sets neither: numbers that are being remade stay as they are.
          "CREATE TEMP TRIGGER touched_prediction AFTER UPDATE OF model ON main.prediction BEGIN"
              + " INSERT OR IGNORE INTO touched_recipe VALUES (new.recipe); END",
          "CREATE TEMP TRIGGER touched_new_mark AFTER INSERT ON main.mark BEGIN"
              + " INSERT OR IGNORE INTO touched_recipe VALUES (new.recipe); END",
          "CREATE TEMP TRIGGER touched_mark AFTER UPDATE ON main.mark BEGIN"
              + " INSERT OR IGNORE INTO touched_recipe VALUES (new.recipe); END",
          // The name of a gate in the catalogue is the gate's slug of today.
          "CREATE TEMP TRIGGER touched_new_gate AFTER INSERT ON main.thing"
              + " WHEN new.noun = 'gate' BEGIN"
              + " INSERT OR IGNORE INTO touched_recipe SELECT recipe FROM main.recipe_stage"
              + " WHERE gate IN (new.slug, new.uuid); END",
          "CREATE TEMP TRIGGER touched_gate AFTER UPDATE OF slug ON main.thing"
              + " WHEN new.noun = 'gate' AND new.slug <> old.slug BEGIN"
              + " INSERT OR IGNORE INTO touched_recipe SELECT recipe FROM main.recipe_stage"
              + " WHERE gate = new.uuid OR gate = new.slug"
              + " OR gate IN (SELECT slug FROM main.thing_slug WHERE thing = new.id); END");

  private final Connection writer;
  private final Catalogue catalogue = new Catalogue();

  private CatalogueUpdates(Connection writer) throws SQLException {
    this.writer = writer;
    CatalogueReader reader = new CatalogueReader(writer);
    int largest = reader.largestKey();
    CatalogueRow row = new CatalogueRow();
    catalogue.fill(
        largest,
        rows -> {
          try {
            reader.read("", () -> row, rows);
          } catch (SQLException e) {
            throw new IllegalStateException("the recipes can't be read", e);
          }
        });
  }

  /** A catalogue of what is stored, which follows what the connection writes. */
  static CatalogueUpdates following(Connection writer) throws SQLException {
    CatalogueUpdates updates = new CatalogueUpdates(writer);
    try (Statement statement = writer.createStatement()) {
      statement.execute("PRAGMA temp_store = MEMORY");
      for (String sql : NOTING) {
        statement.execute(sql);
      }
    }
    return updates;
  }

  /** A catalogue of what is stored, by a connection that never writes. */
  static CatalogueUpdates none(Connection reader) throws SQLException {
    return new CatalogueUpdates(reader);
  }

  Catalogue catalogue() {
    return catalogue;
  }

  /** Takes over what was committed. */
  void follow() {
    try (Statement statement = writer.createStatement()) {
      List<Integer> keys = new ArrayList<>();
      try (ResultSet rows = statement.executeQuery(TOUCHED)) {
        while (rows.next()) {
          keys.add(rows.getInt(1));
        }
      }
      if (keys.isEmpty()) {
        return;
      }
      List<CatalogueRow> found = new ArrayList<>();
      new CatalogueReader(writer).read(TOUCHED, CatalogueRow::new, found::add);
      catalogue.replace(keys, found);
      statement.execute("DELETE FROM temp.touched_recipe");
    } catch (SQLException e) {
      throw new IllegalStateException("the catalogue can't follow what was written", e);
    }
  }
}
