package thudbook.storage;

import static thudbook.storage.schema.Tables.THING;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.documents.Documents;
import thudbook.library.RecipeList;

/**
 * Rows of the list from their tables. They are read without jOOQ: putting its statements together
 * and its records would take most of the time of a search.
 */
final class StoredRecipeList implements RecipeList {
  private static final String ROWS =
      "SELECT thing.id, thing.uuid, thing.slug, thing.title, recipe_fact.made_by,"
          + " recipe_fact.heard, thing.changed_at, recipe_fact.source_kind, recipe_fact.rating,"
          + " mark.favourite, prediction.stale, "
          + PredictionColumns.NAMES
          + " FROM json_each(?) AS wanted"
          + " JOIN thing ON thing.id = wanted.value"
          + " JOIN recipe_fact ON recipe_fact.recipe = thing.id"
          + " JOIN prediction ON prediction.recipe = thing.id"
          + " LEFT JOIN mark ON mark.recipe = thing.id AND mark.member = ?"
          + " ORDER BY wanted.key";
  private static final int FIRST_OF_PREDICTION = 12;

  private static final String TAGS =
      "SELECT recipe_tag.recipe, tag.name FROM json_each(?) AS wanted"
          + " JOIN recipe_tag ON recipe_tag.recipe = wanted.value"
          + " JOIN tag ON tag.id = recipe_tag.tag"
          + " ORDER BY recipe_tag.recipe, recipe_tag.position";

  private static final String CHANNELS =
      "SELECT recipe_stage.recipe, coalesce(thing.title, recipe_stage.gate), recipe_stage.channel"
          + " FROM json_each(?) AS wanted"
          + " JOIN recipe_stage ON recipe_stage.recipe = wanted.value"
          + " LEFT JOIN thing_slug"
          + " ON thing_slug.noun = 'gate' AND thing_slug.slug = recipe_stage.gate"
          + " LEFT JOIN thing ON thing.id = thing_slug.thing"
          + " ORDER BY recipe_stage.recipe, recipe_stage.position";

  private final Connections connections;

  StoredRecipeList(Connections connections) {
    this.connections = connections;
  }

  @Override
  public List<Row> rows(List<Integer> keys, Author member) {
    return connections.read(
        db -> db.connectionResult(connection -> rows(connection, keys.toString(), member)));
  }

  /**
   * Reads rows.
   *
   * @param keys as an array in JSON, in the order of the rows
   */
  private static List<Row> rows(Connection connection, String keys, Author member)
      throws SQLException {
    Map<Integer, List<String>> tags = words(connection, TAGS, keys, rows -> rows.getString(2));
    Map<Integer, List<String>> channels =
        words(connection, CHANNELS, keys, rows -> words(rows.getString(2), rows.getString(3)));
    try (PreparedStatement statement = connection.prepareStatement(ROWS)) {
      statement.setString(1, keys);
      statement.setString(2, member.name());
      try (ResultSet rows = statement.executeQuery()) {
        List<Row> found = new ArrayList<>();
        while (rows.next()) {
          int key = rows.getInt(1);
          found.add(
              row(rows, tags.getOrDefault(key, List.of()), channels.getOrDefault(key, List.of())));
        }
        return found;
      }
    }
  }

  /** What is read of one row. */
  private interface Reading {
    String of(ResultSet rows) throws SQLException;
  }

  private static Map<Integer, List<String>> words(
      Connection connection, String sql, String keys, Reading reading) throws SQLException {
    Map<Integer, List<String>> words = new HashMap<>();
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setString(1, keys);
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          String word = reading.of(rows);
          if (!word.isEmpty()) {
            words.computeIfAbsent(rows.getInt(1), any -> new ArrayList<>()).add(word);
          }
        }
      }
    }
    return words;
  }

  private static Row row(ResultSet rows, List<String> tags, List<String> channels)
      throws SQLException {
    int rating = rows.getInt(9);
    return new Row(
        rows.getInt(1),
        UUID.fromString(rows.getString(2)),
        rows.getString(3),
        rows.getString(4),
        tags,
        rows.getString(5),
        rows.getString(6),
        Instant.ofEpochMilli(rows.getLong(7)),
        rows.getString(8),
        channels,
        PredictionColumns.metrics(rows, FIRST_OF_PREDICTION),
        PredictionColumns.shape(rows, FIRST_OF_PREDICTION),
        rows.getInt(11) == 1,
        rating == 0 ? null : rating,
        rows.getInt(10) == 1);
  }

  /** Gate and channel as far as they are written: {@code Keeper twin, quick}. */
  private static String words(@Nullable String gate, @Nullable String channel) {
    return Stream.of(gate, channel).filter(Objects::nonNull).collect(Collectors.joining(", "));
  }

  @Override
  public List<UUID> ids(List<Integer> keys) {
    return connections.read(
        db -> {
          List<UUID> ids = new ArrayList<>(keys.size());
          for (List<Integer> some : Batches.of(keys)) {
            db.select(THING.UUID)
                .from(THING)
                .where(THING.ID.in(some.stream().map(Integer::longValue).toList()))
                .orderBy(THING.ID)
                .fetch(THING.UUID)
                .forEach(id -> ids.add(UUID.fromString(id)));
          }
          return ids;
        });
  }

  @Override
  public OptionalInt key(UUID id) {
    Long key =
        connections.read(
            db ->
                db.select(THING.ID)
                    .from(THING)
                    .where(
                        StoredThings.is(Documents.RECIPE, id.toString()), THING.BINNED_AT.isNull())
                    .fetchOne(THING.ID));
    return key == null ? OptionalInt.empty() : OptionalInt.of(Math.toIntExact(key));
  }
}
