package thudbook.storage;

import static thudbook.storage.schema.Tables.CHANGE;
import static thudbook.storage.schema.Tables.REVISION;
import static thudbook.storage.schema.Tables.THING;
import static thudbook.storage.schema.Tables.THING_SLUG;

import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Record;
import org.jooq.Record1;
import org.jooq.Select;
import org.jooq.SelectConditionStep;
import org.jooq.impl.DSL;
import thudbook.access.Author;
import thudbook.changes.Kept;
import thudbook.changes.Noun;
import thudbook.changes.Revision;
import thudbook.changes.Store;
import thudbook.changes.Thing;
import thudbook.documents.Slugs;

/**
 * Things of one noun in the tables that all share.
 *
 * @param <T> what kind of things
 */
class StoredThings<T extends Thing> implements Store<T> {
  private final Connections connections;
  private final Noun<T> noun;
  private final ReadTexts<T> read;

  StoredThings(Connections connections, Noun<T> noun) {
    this.connections = connections;
    this.noun = noun;
    this.read = new ReadTexts<>(noun::read);
  }

  @Override
  public Optional<Kept<T>> find(String slugOrId) {
    return connections
        .read(
            db -> {
              Optional<? extends Record> bySlug =
                  select(
                          db,
                          THING.ID.eq(
                              db.select(THING_SLUG.THING)
                                  .from(THING_SLUG)
                                  .where(
                                      THING_SLUG.NOUN.eq(noun.word()),
                                      THING_SLUG.SLUG.eq(slugOrId))))
                      .fetchOptional();
              return bySlug.isPresent()
                  ? bySlug
                  : select(db, isIt(slugOrId.toLowerCase(Locale.ROOT))).fetchOptional();
            })
        .map(this::kept);
  }

  @Override
  public Map<String, Kept<T>> named(Collection<String> slugsOrIds) {
    Map<String, Record> found = new HashMap<>();
    connections.read(
        db -> {
          for (List<String> some : Batches.of(List.copyOf(Set.copyOf(slugsOrIds)))) {
            found.putAll(named(db, some));
          }
          return found;
        });
    Map<String, Kept<T>> things = new HashMap<>();
    found.forEach((name, row) -> things.put(name, kept(row)));
    return things;
  }

  private Map<String, Record> named(DSLContext db, List<String> names) {
    Map<String, Long> bySlug =
        db.select(THING_SLUG.SLUG, THING_SLUG.THING)
            .from(THING_SLUG)
            .where(THING_SLUG.NOUN.eq(noun.word()), THING_SLUG.SLUG.in(names))
            .fetchMap(THING_SLUG.SLUG, THING_SLUG.THING);
    List<String> ids = names.stream().map(name -> name.toLowerCase(Locale.ROOT)).toList();
    Map<Long, Record> byKey = new HashMap<>();
    Map<String, Record> byId = new HashMap<>();
    Condition isOne =
        THING.ID.in(bySlug.values()).or(THING.NOUN.eq(noun.word()).and(THING.UUID.in(ids)));
    for (Record row : select(db, isOne).fetch()) {
      byKey.put(row.get(THING.ID), row);
      byId.put(row.get(THING.UUID), row);
    }
    Map<String, Record> found = new HashMap<>();
    for (String name : names) {
      Long key = bySlug.get(name);
      Record row = key == null ? byId.get(name.toLowerCase(Locale.ROOT)) : byKey.get(key);
      if (row != null) {
        found.put(name, row);
      }
    }
    return found;
  }

  @Override
  public List<Kept<T>> all() {
    return connections
        .read(
            db ->
                select(db, THING.NOUN.eq(noun.word()).and(THING.BINNED_AT.isNull()))
                    .orderBy(THING.TITLE_KEY, THING.ID)
                    .fetch())
        .stream()
        .map(this::kept)
        .sorted((one, other) -> noun.order().compare(one.thing(), other.thing()))
        .toList();
  }

  @Override
  public List<Kept<T>> binned(int limit) {
    return connections
        .read(
            db ->
                select(db, THING.NOUN.eq(noun.word()).and(THING.BINNED_AT.isNotNull()))
                    .orderBy(THING.BINNED_AT.desc(), THING.ID.desc())
                    .limit(limit)
                    .fetch())
        .map(this::kept);
  }

  @Override
  public boolean slugTaken(String slug) {
    return Slugs.isKept(slug)
        || connections.read(
            db ->
                db.fetchExists(
                    THING_SLUG, THING_SLUG.NOUN.eq(noun.word()), THING_SLUG.SLUG.eq(slug)));
  }

  @Override
  public List<Revision<T>> revisions(UUID id, int below, int limit) {
    Condition which = below == 0 ? DSL.noCondition() : REVISION.NUMBER.lt((long) below);
    return connections
        .read(db -> revisions(db, id, which).orderBy(REVISION.NUMBER.desc()).limit(limit).fetch())
        .map(this::revision);
  }

  @Override
  public Optional<Revision<T>> revision(UUID id, int number) {
    return connections
        .read(db -> revisions(db, id, REVISION.NUMBER.eq((long) number)).fetchOptional())
        .map(this::revision);
  }

  /** What documents may call a thing: its slug, an old slug, its id. */
  static Select<Record1<String>> namesOf(Noun<?> noun, UUID id) {
    return DSL.select(THING_SLUG.SLUG)
        .from(THING_SLUG)
        .join(THING)
        .on(THING.ID.eq(THING_SLUG.THING))
        .where(is(noun, id.toString()))
        .unionAll(DSL.select(DSL.val(id.toString())));
  }

  /** Whether a row is that of a thing. */
  static Condition is(Noun<?> noun, String uuid) {
    return THING.NOUN.eq(noun.word()).and(THING.UUID.eq(uuid));
  }

  private Condition isIt(String uuid) {
    return is(noun, uuid);
  }

  private SelectConditionStep<? extends Record> revisions(DSLContext db, UUID id, Condition which) {
    return db.select(REVISION.NUMBER, REVISION.DOCUMENT)
        .select(CHANGE.fields())
        .from(REVISION)
        .join(THING)
        .on(THING.ID.eq(REVISION.THING))
        .join(CHANGE)
        .on(CHANGE.ID.eq(REVISION.CHANGE))
        .where(isIt(id.toString()), which);
  }

  private Revision<T> revision(Record row) {
    String document = row.get(REVISION.DOCUMENT);
    return new Revision<>(
        Math.toIntExact(row.get(REVISION.NUMBER)),
        Instant.ofEpochMilli(row.get(CHANGE.AT)),
        new Author(row.get(CHANGE.AUTHOR)),
        row.get(CHANGE.WHAT),
        row.get(CHANGE.ID),
        read.of(document),
        document);
  }

  private static SelectConditionStep<? extends Record> select(DSLContext db, Condition which) {
    return db.select(
            THING.ID,
            THING.UUID,
            THING.VERSION,
            THING.HEAD,
            THING.AUTHOR,
            THING.CREATED_AT,
            THING.CHANGED_AT,
            THING.BINNED_AT,
            REVISION.DOCUMENT)
        .from(THING)
        .join(REVISION)
        .on(REVISION.THING.eq(THING.ID), REVISION.NUMBER.eq(THING.HEAD))
        .where(which);
  }

  private Kept<T> kept(Record row) {
    Long binned = row.get(THING.BINNED_AT);
    String document = row.get(REVISION.DOCUMENT);
    return new Kept<>(
        read.of(document),
        document,
        row.get(THING.VERSION),
        Math.toIntExact(row.get(THING.HEAD)),
        new Kept.Origin(
            new Author(row.get(THING.AUTHOR)),
            Instant.ofEpochMilli(row.get(THING.CREATED_AT)),
            Instant.ofEpochMilli(row.get(THING.CHANGED_AT))),
        binned == null ? null : Instant.ofEpochMilli(binned));
  }
}
