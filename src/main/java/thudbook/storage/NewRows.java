package thudbook.storage;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Query;
import org.jooq.Record;
import org.jooq.Table;
import org.jspecify.annotations.Nullable;

/**
 * Rows that wait until all of an act's are known: one statement for each table then writes them. A
 * statement for every row takes four times as long.
 */
final class NewRows {
  private final DSLContext db;
  private final Map<Table<?>, Rows> tables = new LinkedHashMap<>();
  private final Map<String, List<Object[]>> statements = new LinkedHashMap<>();

  NewRows(DSLContext db) {
    this.db = db;
  }

  private record Rows(List<Field<?>> columns, List<Object[]> values) {}

  /**
   * Adds a row. Tables are written in the order in which each got its first row.
   *
   * @param row a value for every column that the table's first row had
   */
  void add(Table<?> table, Map<Field<?>, @Nullable Object> row) {
    Rows rows =
        tables.computeIfAbsent(
            table, any -> new Rows(List.copyOf(row.keySet()), new ArrayList<>()));
    rows.values().add(rows.columns().stream().map(row::get).toArray());
  }

  /** Adds the values of one run of a statement; statements come after the tables. */
  void add(String sql, Object... values) {
    statements.computeIfAbsent(sql, any -> new ArrayList<>()).add(values);
  }

  /** Writes all. */
  void write() {
    tables.forEach(
        (table, rows) ->
            db.batch(insert(table, rows.columns()))
                .bind(rows.values().toArray(Object[][]::new))
                .execute());
    statements.forEach(
        (sql, values) -> db.batch(sql).bind(values.toArray(Object[][]::new)).execute());
    tables.clear();
    statements.clear();
  }

  private <R extends Record> Query insert(Table<R> table, List<Field<?>> columns) {
    return db.insertInto(table, columns).values(Collections.nCopies(columns.size(), null));
  }
}
