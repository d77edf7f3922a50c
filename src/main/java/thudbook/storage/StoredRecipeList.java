package thudbook.storage;

import static thudbook.storage.schema.Tables.GATE;
import static thudbook.storage.schema.Tables.GATE_SLUG;
import static thudbook.storage.schema.Tables.PREDICTION;
import static thudbook.storage.schema.Tables.RECIPE;
import static thudbook.storage.schema.Tables.RECIPE_STAGE;
import static thudbook.storage.schema.Tables.RECIPE_TAG;
import static thudbook.storage.schema.Tables.TAG;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Record1;
import org.jooq.Select;
import org.jooq.impl.DSL;
import org.jspecify.annotations.Nullable;
import thudbook.library.RecipeList;

/**
 * The list of recipes from their tables. A page begins after a row, never at a number of rows: rows
 * that come or go before it shift nothing.
 */
final class StoredRecipeList implements RecipeList {
  private final Connections connections;

  StoredRecipeList(Connections connections) {
    this.connections = connections;
  }

  @Override
  public Page page(Request request) {
    String text = request.after();
    Cursor after = text == null || text.isEmpty() ? null : Cursor.read(text, request);
    ListOrder order = ListOrder.of(request.order());
    int limit = request.limit();
    return connections.read(
        db -> {
          List<Record> found = List.copyOf(pageAfter(db, request, after).fetch());
          List<Record> shown = found.subList(0, Math.min(limit, found.size()));
          Condition wanted = wanted(db, request);
          long offset = after == null ? 0 : count(db, wanted.and(order.upTo(after)));
          return new Page(
              rows(db, shown),
              count(db, wanted),
              offset,
              after == null || offset == 0 ? null : previous(db, request, after),
              found.size() > limit ? order.cursor(shown.get(limit - 1)).text(request) : null);
        });
  }

  @Override
  public List<TagCount> tags() {
    return connections.read(
        db ->
            db.select(TAG.NAME, DSL.count())
                .from(TAG)
                .join(RECIPE_TAG)
                .on(RECIPE_TAG.TAG.eq(TAG.ID))
                .join(RECIPE)
                .on(RECIPE.ID.eq(RECIPE_TAG.RECIPE))
                .where(RECIPE.BINNED_AT.isNull())
                .groupBy(TAG.ID)
                .orderBy(TAG.FOLDED)
                .fetch(row -> new TagCount(row.value1(), row.value2())));
  }

  /** The rows of a page and one more, which tells whether another page follows. */
  static Select<Record> pageAfter(DSLContext db, Request request, @Nullable Cursor after) {
    ListOrder order = ListOrder.of(request.order());
    List<Field<?>> columns = new ArrayList<>(List.of(RECIPE.fields()));
    columns.add(PREDICTION.STALE);
    columns.addAll(PredictionColumns.all());
    Condition wanted = wanted(db, request);
    return db.select(columns)
        .from(RECIPE)
        .join(PREDICTION)
        .on(PREDICTION.RECIPE.eq(RECIPE.ID))
        .where(after == null ? wanted : wanted.and(order.after(after)))
        .orderBy(order.forward())
        .limit(request.limit() + 1);
  }

  /** The cursor of the page before the one that begins after a cursor, empty for the first page. */
  private static String previous(DSLContext db, Request request, Cursor after) {
    Record lastBefore = lastBefore(db, request, after).fetchOne();
    return lastBefore == null ? "" : ListOrder.of(request.order()).cursor(lastBefore).text(request);
  }

  /** The last row of the page before the previous one. */
  static Select<Record> lastBefore(DSLContext db, Request request, Cursor after) {
    ListOrder order = ListOrder.of(request.order());
    return db.select(RECIPE.fields())
        .from(RECIPE)
        .where(wanted(db, request).and(order.upTo(after)))
        .orderBy(order.backward())
        .limit(1)
        .offset(request.limit());
  }

  private static int count(DSLContext db, Condition condition) {
    return Objects.requireNonNull(counted(db, condition).fetchOne()).value1();
  }

  /** The number of recipes of which something holds. */
  static Select<Record1<Integer>> counted(DSLContext db, Condition condition) {
    return db.selectCount().from(RECIPE).where(condition);
  }

  /** What holds of every recipe that a request asks for. */
  static Condition wanted(DSLContext db, Request request) {
    Condition kept = RECIPE.BINNED_AT.isNull();
    String tag = request.tag();
    if (tag == null) {
      return kept;
    }
    return kept.andExists(
        db.selectOne()
            .from(RECIPE_TAG)
            .where(
                RECIPE_TAG.RECIPE.eq(RECIPE.ID),
                RECIPE_TAG.TAG.eq(
                    db.select(TAG.ID).from(TAG).where(TAG.FOLDED.eq(Folding.fold(tag))))));
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
    return new Row(
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
        row.get(PREDICTION.STALE) == 1);
  }

  /** Gate and channel as far as they are written: {@code Keeper twin, quick}. */
  private static String words(@Nullable String gate, @Nullable String channel) {
    return Stream.of(gate, channel).filter(Objects::nonNull).collect(Collectors.joining(", "));
  }
}
