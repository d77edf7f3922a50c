package thudbook.storage;

import java.nio.ByteBuffer;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.function.Supplier;
import thudbook.library.CatalogueRow;
import thudbook.library.ChannelName;
import thudbook.library.Facet;
import thudbook.library.Flag;
import thudbook.library.Quantity;
import thudbook.library.Words;
import thudbook.predictions.SmallShape;
import thudbook.storage.keeping.DatabaseFile;

/**
 * Reads rows of the catalogue. Four queries, each in the order of the recipes, are walked side by
 * side; a million recipes pass in seconds, because no object is made of what is only a number.
 */
final class CatalogueReader {
  /** What a missing number is read as: asking for each whether it was null takes twice the time. */
  private static final String NONE = "9e999";

  private static final String NUMBERS = numbers();

  private static final String RECIPES =
      "SELECT thing.id, thing.title_key, thing.changed_at, recipe_fact.made_by,"
          + " recipe_fact.source_kind, recipe_fact.made_on, recipe_fact.rating,"
          + " recipe_fact.photos, prediction.reach, prediction.shape"
          + NUMBERS
          + " FROM thing JOIN recipe_fact ON recipe_fact.recipe = thing.id"
          + " JOIN prediction ON prediction.recipe = thing.id"
          + " WHERE thing.noun = 'recipe' AND thing.binned_at IS NULL %s ORDER BY thing.id";
  private static final int FIRST_NUMBER = 11;

  private static final String TAGS =
      "SELECT recipe, tag FROM recipe_tag WHERE TRUE %s ORDER BY recipe";

  private static final String STAGES =
      "SELECT recipe_stage.recipe, coalesce(named.slug, numbered.slug, recipe_stage.gate),"
          + " recipe_stage.channel FROM recipe_stage"
          + " LEFT JOIN thing_slug"
          + " ON thing_slug.noun = 'gate' AND thing_slug.slug = recipe_stage.gate"
          + " LEFT JOIN thing AS named ON named.id = thing_slug.thing"
          + " LEFT JOIN thing AS numbered"
          + " ON numbered.noun = 'gate' AND numbered.uuid = recipe_stage.gate"
          + " WHERE recipe_stage.gate IS NOT NULL %s ORDER BY recipe_stage.recipe";

  private static final String MARKS =
      "SELECT recipe, member, favourite, last_used_at FROM mark WHERE TRUE %s ORDER BY recipe";

  private final Connection connection;
  private final Map<Long, Tag> tags = new HashMap<>();

  private record Tag(String folded, String name) {}

  CatalogueReader(Connection connection) {
    this.connection = connection;
  }

  private static String numbers() {
    StringBuilder columns = new StringBuilder();
    for (Quantity quantity : Quantity.values()) {
      String column =
          quantity
              .metric()
              .map(metric -> "prediction." + metric.name().toLowerCase(Locale.ROOT))
              .orElseGet(() -> "recipe_fact." + FactRows.column(quantity).getName());
      columns.append(", coalesce(").append(column).append(", ").append(NONE).append(')');
    }
    return columns.toString();
  }

  /** A key that no recipe exceeds, 0 if there is none. */
  int largestKey() throws SQLException {
    return DatabaseFile.number(connection, "SELECT coalesce(max(id), 0) FROM thing")
        .orElseThrow()
        .intValue();
  }

  /**
   * Reads recipes that are not in the bin, in the order of their keys.
   *
   * @param among a query that gives keys; empty: all
   * @param row gives the row that is filled in next, which may always be the same
   */
  void read(String among, Supplier<CatalogueRow> row, Consumer<CatalogueRow> rows)
      throws SQLException {
    readTags();
    try (Walk recipes = new Walk(RECIPES, "thing.id", among);
        Walk tagged = new Walk(TAGS, "recipe", among);
        Walk stages = new Walk(STAGES, "recipe_stage.recipe", among);
        Walk marks = new Walk(MARKS, "recipe", among)) {
      while (recipes.next()) {
        CatalogueRow filled = row.get();
        recipe(recipes, filled);
        while (tagged.isAt(recipes.key)) {
          Tag tag = Objects.requireNonNull(tags.get(tagged.rows.getLong(2)));
          filled.value(Facet.TAG, tag.folded(), tag.name());
          tagged.next();
        }
        while (stages.isAt(recipes.key)) {
          filled.channel(new ChannelName(stages.rows.getString(2), stages.rows.getString(3)));
          stages.next();
        }
        while (marks.isAt(recipes.key)) {
          mark(marks.rows, filled);
          marks.next();
        }
        rows.accept(filled);
      }
    }
  }

  private void readTags() throws SQLException {
    try (PreparedStatement statement =
            connection.prepareStatement("SELECT id, folded, name FROM tag");
        ResultSet rows = statement.executeQuery()) {
      while (rows.next()) {
        tags.put(rows.getLong(1), new Tag(rows.getString(2), rows.getString(3)));
      }
    }
  }

  private static void recipe(Walk walk, CatalogueRow row) throws SQLException {
    ResultSet rows = walk.rows;
    row.begin(walk.key, rows.getString(2), rows.getLong(3));
    String by = rows.getString(4);
    if (by != null) {
      row.value(Facet.BY, Words.fold(by), by);
    }
    String source = rows.getString(5);
    if (source != null) {
      row.value(Facet.SOURCE, source, source);
    }
    long day = rows.getLong(6);
    if (!rows.wasNull()) {
      row.made(LocalDate.ofEpochDay(day));
    }
    String rating = rows.getString(7);
    if (rating != null) {
      row.value(Facet.RATING, rating, rating);
    }
    if (rows.getInt(8) > 0) {
      row.flag(Flag.PHOTOS);
    }
    String reach = rows.getString(9);
    if (reach == null) {
      row.flag(Flag.INCOMPLETE);
    } else {
      row.value(Facet.REACH, reach, reach);
      ByteBuffer shape = ByteBuffer.wrap(rows.getBytes(10));
      for (int i = 0; i < SmallShape.POINTS; i++) {
        row.level(i, shape.getDouble());
      }
    }
    Quantity[] quantities = Quantity.values();
    for (int i = 0; i < quantities.length; i++) {
      double value = rows.getDouble(FIRST_NUMBER + i);
      if (!Double.isInfinite(value)) {
        row.number(quantities[i], value);
      }
    }
  }

  private static void mark(ResultSet rows, CatalogueRow row) throws SQLException {
    if (rows.getInt(3) == 1) {
      row.favouriteOf(rows.getString(2));
    }
    long used = rows.getLong(4);
    if (!rows.wasNull()) {
      row.used(used);
    }
  }

  /** A query in the order of the recipes whose keys stand first, and where it is. */
  private final class Walk implements AutoCloseable {
    private final PreparedStatement statement;
    private final ResultSet rows;
    private int key;

    Walk(String sql, String column, String among) throws SQLException {
      String which = among.isEmpty() ? "" : "AND " + column + " IN (" + among + ")";
      statement = connection.prepareStatement(String.format(Locale.ROOT, sql, which));
      rows = statement.executeQuery();
      if (!sql.equals(RECIPES)) {
        next();
      }
    }

    boolean next() throws SQLException {
      boolean more = rows.next();
      key = more ? rows.getInt(1) : Integer.MAX_VALUE;
      return more;
    }

    /**
     * Whether it is at a recipe; rows of recipes that were passed over, in the bin, are skipped.
     */
    boolean isAt(int recipe) throws SQLException {
      while (key < recipe) {
        next();
      }
      return key == recipe;
    }

    @Override
    public void close() throws SQLException {
      statement.close();
    }
  }
}
