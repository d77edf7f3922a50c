package thudbook.storage;

import static thudbook.storage.schema.Tables.SHELF;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jooq.DSLContext;
import thudbook.access.Author;
import thudbook.library.ShelfStore;
import thudbook.library.Words;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.storage.schema.tables.records.ShelfRecord;

/** Shelves in their table. */
final class StoredShelves implements ShelfStore {
  private static final int LONGEST_NAME = 80;
  private static final int LONGEST_SEARCH = 8_000;

  private final Connections connections;

  StoredShelves(Connections connections) {
    this.connections = connections;
  }

  @Override
  public List<Shelf> all() {
    return connections.read(
        db -> db.selectFrom(SHELF).orderBy(SHELF.FOLDED).fetch(StoredShelves::shelf));
  }

  @Override
  public Optional<Shelf> find(long id) {
    return connections.read(
        db -> db.selectFrom(SHELF).where(SHELF.ID.eq(id)).fetchOptional(StoredShelves::shelf));
  }

  @Override
  public Shelf add(String name, String search, Author author, Instant at) {
    String kept = checked(name, search);
    return connections.write(
        db -> {
          refuseTaken(db, kept, 0);
          return db.insertInto(SHELF)
              .set(SHELF.NAME, kept)
              .set(SHELF.FOLDED, Words.fold(kept))
              .set(SHELF.SEARCH, search)
              .set(SHELF.AUTHOR, author.name())
              .set(SHELF.MADE_AT, at.toEpochMilli())
              .returning()
              .fetchSingle(StoredShelves::shelf);
        });
  }

  @Override
  public Shelf change(long id, String name, String search) {
    String kept = checked(name, search);
    return connections.write(
        db -> {
          refuseTaken(db, kept, id);
          return db.update(SHELF)
              .set(SHELF.NAME, kept)
              .set(SHELF.FOLDED, Words.fold(kept))
              .set(SHELF.SEARCH, search)
              .where(SHELF.ID.eq(id))
              .returning()
              .fetchOptional(StoredShelves::shelf)
              .orElseThrow(
                  () ->
                      Refusal.of(
                          Refusal.Kind.NOT_FOUND, "no-such-shelf", "There is no such shelf."));
        });
  }

  @Override
  public boolean remove(long id) {
    return connections.write(db -> db.deleteFrom(SHELF).where(SHELF.ID.eq(id)).execute() > 0);
  }

  private static String checked(String name, String search) {
    String kept = name.strip();
    if (kept.isEmpty() || kept.length() > LONGEST_NAME) {
      throw refused("name", kept, "a name of 1 to " + LONGEST_NAME + " characters");
    }
    if (search.length() > LONGEST_SEARCH) {
      throw refused("search", search, "a search of at most " + LONGEST_SEARCH + " characters");
    }
    return kept;
  }

  private static Refusal refused(String place, String found, String expected) {
    String shown = found.length() > 40 ? found.substring(0, 40) + "…" : found;
    return new Refusal(
        Refusal.Kind.REFUSED_VALUES,
        List.of(
            new Fault(
                "/" + place,
                0,
                "out-of-range",
                shown,
                expected,
                "A shelf needs " + expected + ".")));
  }

  private static void refuseTaken(DSLContext db, String name, long id) {
    if (db.fetchExists(SHELF, SHELF.FOLDED.eq(Words.fold(name)), SHELF.ID.ne(id))) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT, "name-taken", "There is a shelf “" + name + "” already.");
    }
  }

  private static Shelf shelf(ShelfRecord row) {
    return new Shelf(
        row.getId(),
        row.getName(),
        row.getSearch(),
        new Author(row.getAuthor()),
        Instant.ofEpochMilli(row.getMadeAt()));
  }
}
