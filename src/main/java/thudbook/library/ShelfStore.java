package thudbook.library;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import thudbook.access.Author;
import thudbook.library.typed.SearchAddress;

/** Searches that were given a name. */
public interface ShelfStore {
  /**
   * A named search.
   *
   * @param name 1 to 80 characters; no two are the same without case and accents
   * @param search the query of its address, see {@link SearchAddress#query}
   */
  record Shelf(long id, String name, String search, Author author, Instant madeAt) {}

  /** All shelves, by name. */
  List<Shelf> all();

  /** A shelf by its number. */
  Optional<Shelf> find(long id);

  /**
   * Puts up a shelf.
   *
   * @throws thudbook.quantities.Refusal of kind CONFLICT if one has that name, of kind
   *     REFUSED_VALUES if the name is empty or too long
   */
  Shelf add(String name, String search, Author author, Instant at);

  /**
   * Gives a shelf another name and search.
   *
   * @throws thudbook.quantities.Refusal as {@link #add}, or of kind NOT_FOUND
   */
  Shelf change(long id, String name, String search);

  /** Takes a shelf down, and returns whether there was one. The recipes stay. */
  boolean remove(long id);
}
