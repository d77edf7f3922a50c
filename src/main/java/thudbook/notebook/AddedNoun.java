package thudbook.notebook;

import java.util.function.Function;
import thudbook.changes.Keeping;
import thudbook.changes.Rule;
import thudbook.changes.Store;
import thudbook.changes.Thing;
import thudbook.documents.NounDocument;

/**
 * A noun that a notebook is opened with beside those that every notebook has. It gets all that they
 * have: a store, revisions, the bin, undo, import, export, JSON routes and pages.
 *
 * @param documents how things of it are read and written
 * @param rule what has to hold, made for the store of its things
 * @param <T> its things
 */
public record AddedNoun<T extends Thing>(
    NounDocument<T> documents, Function<Store<T>, Rule<T>> rule) {
  /** The noun with where a notebook keeps its things. */
  Keeping<T> in(Stores stores) {
    Store<T> things = stores.things(documents);
    return new Keeping<>(documents, things, rule.apply(things));
  }
}
