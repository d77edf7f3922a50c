package thudbook.storage;

import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_SLUG;
import static thudbook.storage.schema.Tables.MARK;
import static thudbook.storage.schema.Tables.PREDICTION;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_FACT;
import static thudbook.storage.schema.Tables.RECIPE_STAGE;
import static thudbook.storage.schema.Tables.RECIPE_TAG;
import static thudbook.storage.schema.Tables.TAG;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.library.RecipeList;

/** Rows of the list from their tables. */
final class StoredRecipeList implements RecipeList {
  private final Connections connections;

  StoredRecipeList(Connections connections) {
    this.connections = connections;
  }

  @Override
  public List<Row> rows(List<Integer> keys, Author member) {
    List<Field<?>> columns = new ArrayList<>(List.of(RECIPE.fields()));
    columns.add(RECIPE_FACT.RATING);
    columns.add(PREDICTION.STALE);
    columns.add(MARK.FAVOURITE);
    columns.addAll(PredictionColumns.all());
    List<Long> ids = keys.stream().map(Integer::longValue).toList();
    return connections.read(
        db -> {
          Map<Long, Record> found =
              db.select(columns)
                  .from(RECIPE)
                  .join(RECIPE_FACT)
                  .on(RECIPE_FACT.RECIPE.eq(RECIPE.ID))
                  .join(PREDICTION)
                  .on(PREDICTION.RECIPE.eq(RECIPE.ID))
                  .leftJoin(MARK)
                  .on(MARK.RECIPE.eq(RECIPE.ID), MARK.MEMBER.eq(member.name()))
                  .where(RECIPE.ID.in(ids))
                  .fetchMap(RECIPE.ID, row -> row);
          return rows(db, ids.stream().map(found::get).filter(Objects::nonNull).toList());
        });
  }

  @Override
  public List<UUID> ids(List<Integer> keys) {
    return connections.read(
        db -> {
          List<UUID> ids = new ArrayList<>(keys.size());
          for (List<Integer> some : Batches.of(keys)) {
            db.select(RECIPE.UUID)
                .from(RECIPE)
                .where(RECIPE.ID.in(some.stream().map(Integer::longValue).toList()))
                .orderBy(RECIPE.ID)
                .fetch(RECIPE.UUID)
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
                db.select(RECIPE.ID)
                    .from(RECIPE)
                    .where(RECIPE.UUID.eq(id.toString()), RECIPE.BINNED_AT.isNull())
                    .fetchOne(RECIPE.ID));
    return key == null ? OptionalInt.empty() : OptionalInt.of(Math.toIntExact(key));
  }

  private static List<Row> rows(DSLContext db, List<Record> found) {
    List<Long> keys = found.stream().map(row -> row.get(RECIPE.ID)).toList();
    Map<Long, List<String>> tags =
        db.select(RECIPE_TAG.RECIPE, TAG.NAME)
            .from(RECIPE_TAG)
            .join(TAG)
            .on(TAG.ID.eq(RECIPE_TAG.TAG))
            .where(RECIPE_TAG.RECIPE.in(keys))
            .orderBy(RECIPE_TAG.RECIPE, RECIPE_TAG.POSITION)
            .fetchGroups(RECIPE_TAG.RECIPE, TAG.NAME);
    Map<Long, List<String>> channels =
        db.select(RECIPE_STAGE.RECIPE, RECIPE_STAGE.GATE, RECIPE_STAGE.CHANNEL, GATE.TITLE)
            .from(RECIPE_STAGE)
            .leftJoin(GATE_SLUG)
            .on(GATE_SLUG.SLUG.eq(RECIPE_STAGE.GATE))
            .leftJoin(GATE)
            .on(GATE.ID.eq(GATE_SLUG.GATE))
            .where(RECIPE_STAGE.RECIPE.in(keys))
            .orderBy(RECIPE_STAGE.RECIPE, RECIPE_STAGE.POSITION)
            .fetchGroups(
                RECIPE_STAGE.RECIPE,
                row -> {
                  String title = row.get(GATE.TITLE);
                  return words(
                      title == null ? row.get(RECIPE_STAGE.GATE) : title,
                      row.get(RECIPE_STAGE.CHANNEL));
                });
    return found.stream()
        .map(
            row ->
                row(
                    row,
                    tags.getOrDefault(row.get(RECIPE.ID), List.of()),
                    channels.getOrDefault(row.get(RECIPE.ID), List.of())))
        .toList();
  }

  private static Row row(Record row, List<String> tags, List<String> channels) {
    Long rating = row.get(RECIPE_FACT.RATING);
    return new Row(
        Math.toIntExact(row.get(RECIPE.ID)),
        UUID.fromString(row.get(RECIPE.UUID)),
        row.get(RECIPE.SLUG),
        row.get(RECIPE.TITLE),
        tags,
        row.get(RECIPE.MADE_BY),
        row.get(RECIPE.HEARD),
        Instant.ofEpochMilli(row.get(RECIPE.CHANGED_AT)),
        row.get(RECIPE.SOURCE_KIND),
        channels.stream().filter(words -> !words.isEmpty()).toList(),
        PredictionColumns.metrics(row),
        PredictionColumns.shape(row),
        row.get(PREDICTION.STALE) == 1,
        rating == null ? null : Math.toIntExact(rating),
        Objects.equals(row.get(MARK.FAVOURITE), 1L));
  }

  /** Gate and channel as far as they are written: {@code Keeper twin, quick}. */
  private static String words(@Nullable String gate, @Nullable String channel) {
    return Stream.of(gate, channel).filter(Objects::nonNull).collect(Collectors.joining(", "));
  }
}
