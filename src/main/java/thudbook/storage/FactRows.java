package thudbook.storage;

import static thudbook.storage.schema.Tables.RECIPE_FACT;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.SQLDialect;
import org.jooq.conf.Settings;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import thudbook.documents.Documents;
import thudbook.library.Quantity;
import thudbook.library.RecipeFacts;
import thudbook.library.Term;
import thudbook.library.WordIndex.Place;
import thudbook.library.WordIndex.Rank;
import thudbook.recipes.Recipe;
import thudbook.storage.keeping.DatabaseFile;

/** What a recipe is searched by, in its rows. */
final class FactRows {
  /** The settings of the sound that have a column. */
  private static final Map<Quantity, Field<Double>> COLUMNS =
      Map.of(
          Quantity.INDEX, RECIPE_FACT.MODULATION_INDEX,
          Quantity.PEAK, RECIPE_FACT.ENVELOPE_PEAK,
          Quantity.DECAY, RECIPE_FACT.ENVELOPE_DECAY,
          Quantity.CARRIER, RECIPE_FACT.CARRIER);

  private static final String WORDS = "INSERT INTO recipe_words (rowid, words) VALUES (?, ?)";

  private static final int BATCH = 200;

  /** So many words of each place are looked up when the index is verified. */
  private static final int FIRST_WORDS = 12;

  private FactRows() {}

  /** The column of a setting of the sound. */
  static Field<Double> column(Quantity quantity) {
    return Objects.requireNonNull(COLUMNS.get(quantity));
  }

  /** Takes the rows of recipes away, before others come. */
  static void delete(DSLContext db, Collection<Long> ids) {
    db.deleteFrom(RECIPE_FACT).where(RECIPE_FACT.RECIPE.in(ids)).execute();
    String words =
        ids.stream()
            .flatMap(id -> Stream.of(Rank.values()).map(rank -> StoredWords.row(id, rank)))
            .map(String::valueOf)
            .collect(Collectors.joining(", "));
    db.execute("DELETE FROM recipe_words WHERE rowid IN (" + words + ")");
  }

  /** Adds the rows of a recipe that has none. */
  static void add(NewRows rows, long id, Recipe recipe) {
    RecipeFacts facts = RecipeFacts.of(recipe);
    Map<Field<?>, @Nullable Object> columns = columns(recipe, facts);
    columns.put(RECIPE_FACT.RECIPE, id);
    rows.add(RECIPE_FACT, columns);
    for (Rank rank : Rank.values()) {
      String words = words(facts, rank);
      if (!words.isEmpty()) {
        rows.add(WORDS, StoredWords.row(id, rank), words);
      }
    }
  }

  private static String words(RecipeFacts facts, Rank rank) {
    return facts.words().entrySet().stream()
        .filter(place -> place.getKey().rank() == rank && !place.getValue().isEmpty())
        .map(Map.Entry::getValue)
        .collect(Collectors.joining(" " + RecipeFacts.APART + " "));
  }

  /** The columns of a recipe and its facts. */
  static Map<Field<?>, @Nullable Object> columns(Recipe recipe, RecipeFacts facts) {
    Map<Field<?>, @Nullable Object> columns = new HashMap<>();
    columns.put(RECIPE_FACT.MADE_BY, recipe.by());
    columns.put(RECIPE_FACT.HEARD, recipe.heard());
    columns.put(RECIPE_FACT.SOURCE_KIND, RecipeRows.kind(recipe.source()));
    columns.put(RECIPE_FACT.MADE_ON, facts.madeOn() == null ? null : facts.madeOn().toEpochDay());
    columns.put(RECIPE_FACT.RATING, facts.rating() == null ? null : facts.rating().longValue());
    columns.put(RECIPE_FACT.PHOTOS, (long) facts.photos());
    COLUMNS.forEach((quantity, column) -> columns.put(column, facts.numbers().get(quantity)));
    return columns;
  }

  /** Whether the index finds the words of a recipe at their places, as far as the first of each. */
  static boolean isIndexed(DSLContext db, long id, RecipeFacts facts) {
    return facts.words().entrySet().stream()
        .filter(place -> !place.getValue().isEmpty())
        .allMatch(place -> isIndexed(db, StoredWords.row(id, place.getKey().rank()), place));
  }

  private static boolean isIndexed(DSLContext db, long row, Map.Entry<Place, String> place) {
    List<String> all = List.of(place.getValue().split(" ", -1));
    List<String> first = all.subList(0, Math.min(FIRST_WORDS, all.size()));
    String match = StoredWords.match(new Term(first, false));
    return !db.fetch(
            "SELECT 1 FROM recipe_words WHERE rowid = ? AND recipe_words MATCH ?", row, match)
        .isEmpty();
  }

  /** Makes the rows that recipes of an earlier order lack. */
  static void fill(DataSource source) {
    try (Connection connection = source.getConnection()) {
      // They are made in the order of the keys, and a new recipe gets its own at once.
      if (DatabaseFile.number(connection, "SELECT max(id) FROM thing WHERE noun = 'recipe'")
          .equals(DatabaseFile.number(connection, "SELECT max(recipe) FROM recipe_fact"))) {
        return;
      }
      Settings settings = new Settings().withRenderSchema(false).withExecuteLogging(false);
      DSLContext db = DSL.using(connection, SQLDialect.SQLITE, settings);
      while (db.transactionResult(transaction -> fillSome(transaction.dsl())) == BATCH) {
        // The next ones.
      }
    } catch (SQLException e) {
      throw new IllegalStateException("what recipes are searched by can't be made", e);
    }
  }

  private static int fillSome(DSLContext db) {
    var rows =
        db.fetch(
            "SELECT thing.id, revision.document FROM thing"
                + " JOIN revision ON revision.thing = thing.id AND revision.number = thing.head"
                + " WHERE thing.noun = 'recipe'"
                + " AND thing.id NOT IN (SELECT recipe FROM recipe_fact)"
                + " ORDER BY thing.id LIMIT "
                + BATCH);
    NewRows made = new NewRows(db);
    for (var row : rows) {
      add(made, row.get(0, Long.class), Documents.RECIPE.read(row.get(1, String.class)));
    }
    made.write();
    return rows.size();
  }
}
