package thudbook.storage.keeping;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import thudbook.quantities.Refusal;

/**
 * What the tables of a database are, beside what they have to be. Nothing is kept for it: the
 * migrations that the file says it has are run once more, in memory, and both schemas compared.
 */
public final class SchemaComparison {
  /** How many tables of a foreign database are named. */
  private static final int NAMED = 3;

  // SQLite's own tables (statistics) come and go. What a virtual table keeps its rows in is made by
  // SQLite and worded by its version, so that only its being there counts.
  private static final String ENTRIES =
      "SELECT entry.type, entry.name,"
          + " CASE WHEN listed.type = 'shadow' THEN '' ELSE coalesce(entry.sql, '') END"
          + " FROM sqlite_schema entry LEFT JOIN pragma_table_list listed"
          + " ON listed.schema = 'main' AND listed.name = entry.name"
          + " WHERE entry.name NOT LIKE 'sqlite\\_%' ESCAPE '\\'";

  private SchemaComparison() {}

  /**
   * Refuses a database that is no notebook of any version.
   *
   * @param named what a person knows the file as
   */
  public static void refuseForeign(Path named, Connection connection) throws SQLException {
    List<String> scripts = scripts(connection);
    if (!scripts.isEmpty() && script(scripts.get(0)) != null) {
      return;
    }
    List<String> tables = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery(
                "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")) {
      while (rows.next()) {
        tables.add(rows.getString(1));
      }
    }
    throw Refusal.of(
        Refusal.Kind.CONFLICT,
        "not-a-notebook",
        "The file "
            + named
            + (tables.isEmpty()
                ? " is a database without tables, so there is no notebook in it."
                : " is a database, but not of a notebook: it has the tables "
                    + String.join(", ", tables.subList(0, Math.min(NAMED, tables.size())))
                    + (tables.size() > NAMED ? " and others." : ".")));
  }

  /**
   * Where the tables of a notebook differ from those of the version that it says it has.
   *
   * @return one part of a sentence each, what is missing first; empty: nowhere
   */
  public static List<String> differences(Connection connection) throws SQLException {
    Map<String, String> expected = expected(connection);
    Map<String, String> found = entries(connection);
    List<String> differences = new ArrayList<>(missing(expected, found));
    expected.forEach(
        (entry, sql) -> {
          if (found.containsKey(entry) && !sql.equals(found.get(entry))) {
            differences.add("the " + entry + " is not made as a notebook's");
          }
        });
    found.keySet().stream()
        .filter(entry -> !expected.containsKey(entry))
        .forEach(entry -> differences.add("the " + entry + " is none of a notebook's"));
    return differences;
  }

  /** What a notebook lacks of the tables, indexes and triggers that it has to have. */
  public static List<String> missing(Connection connection) throws SQLException {
    return missing(expected(connection), entries(connection));
  }

  private static List<String> missing(Map<String, String> expected, Map<String, String> found) {
    return expected.keySet().stream()
        .filter(entry -> !found.containsKey(entry))
        // Indexes go with their table, which is what a person has to know.
        .sorted(Comparator.comparing((String entry) -> !entry.startsWith("table ")))
        .map(entry -> "the " + entry + " is missing")
        .toList();
  }

  /** The schema that the migrations make which this database says it has. */
  private static Map<String, String> expected(Connection connection) throws SQLException {
    try (Connection memory = new SQLiteConfig().createConnection("jdbc:sqlite::memory:");
        Statement statement = memory.createStatement()) {
      for (String name : scripts(connection)) {
        String script = script(name);
        if (script != null) {
          // Unlike execute, this runs every statement of a script.
          statement.executeUpdate(script);
        }
      }
      return entries(memory);
    }
  }

  /** The names of the migrations that were run on a database, in order. */
  private static List<String> scripts(Connection connection) throws SQLException {
    List<String> names = new ArrayList<>();
    if (Schema.hasHistory(connection)) {
      try (Statement statement = connection.createStatement();
          ResultSet rows =
              statement.executeQuery(
                  "SELECT script FROM "
                      + Schema.HISTORY
                      + " WHERE success ORDER BY CAST(version AS INTEGER)")) {
        while (rows.next()) {
          names.add(rows.getString(1));
        }
      }
    }
    return names;
  }

  /** The text of a migration, or nothing if this version has none of that name. */
  private static @Nullable String script(String name) {
    try (InputStream file =
        name.indexOf('/') < 0
            ? SchemaComparison.class.getResourceAsStream("/migrations/" + name)
            : null) {
      return file == null ? null : new String(file.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** How each table, index, view and trigger is made, but for the history of migrations. */
  private static Map<String, String> entries(Connection connection) throws SQLException {
    Map<String, String> entries = new TreeMap<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(ENTRIES)) {
      while (rows.next()) {
        if (!rows.getString(2).startsWith(Schema.HISTORY)) {
          entries.put(rows.getString(1) + " " + rows.getString(2), rows.getString(3));
        }
      }
    }
    return entries;
  }
}
