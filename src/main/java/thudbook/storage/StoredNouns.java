package thudbook.storage;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jooq.DSLContext;
import thudbook.changes.Noun;
import thudbook.changes.Store;
import thudbook.changes.Thing;
import thudbook.documents.Documents;
import thudbook.recipes.Recipe;

/** The nouns of a notebook with what hangs on each, in the order in which they are listed. */
final class StoredNouns {
  private final List<Stored<?>> nouns;

  private StoredNouns(List<Stored<?>> nouns) {
    this.nouns = nouns;
  }

  /**
   * A noun and what hangs on it.
   *
   * @param <T> its things
   */
  record Stored<T extends Thing>(Noun<T> noun, Tables<T> tables) {}

  /** Opens what hangs on a noun, for one act. */
  interface Tables<T extends Thing> {
    SideRows<T> open(DSLContext db, NewRows rows, long change);
  }

  /**
   * The nouns of every notebook, and others.
   *
   * @param more nouns on which nothing hangs
   */
  static StoredNouns with(List<? extends Noun<?>> more) {
    List<Stored<?>> nouns = new ArrayList<>();
    nouns.add(new Stored<>(Documents.RECIPE, RecipeRows::new));
    nouns.add(new Stored<>(Documents.GATE, GateRows::new));
    nouns.add(plain(Documents.MODULE));
    nouns.add(plain(Documents.SESSION));
    more.forEach(noun -> nouns.add(plain(noun)));
    return new StoredNouns(List.copyOf(nouns));
  }

  private static <T extends Thing> Stored<T> plain(Noun<T> noun) {
    return new Stored<>(noun, (db, rows, change) -> new SideRows<>());
  }

  /** A store a noun. */
  Map<Noun<?>, Store<?>> stores(Connections connections, Store<Recipe> recipes) {
    Map<Noun<?>, Store<?>> stores = new HashMap<>();
    nouns.forEach(
        stored -> stores.put(stored.noun(), new StoredThings<>(connections, stored.noun())));
    stores.put(Documents.RECIPE, recipes);
    return Map.copyOf(stores);
  }

  List<Stored<?>> all() {
    return nouns;
  }

  /** The same with gates before the recipes that are predicted with them. */
  List<Stored<?>> forWriting() {
    List<Stored<?>> reversed = new ArrayList<>(nouns);
    Collections.reverse(reversed);
    return reversed;
  }

  /** The noun that is called so. */
  Noun<?> named(String word) {
    return nouns.get(rank(word)).noun();
  }

  /** The place of a noun in the list. */
  int rank(String word) {
    for (int i = 0; i < nouns.size(); i++) {
      if (nouns.get(i).noun().word().equals(word)) {
        return i;
      }
    }
    throw new IllegalStateException("this version does not know what a " + word + " is");
  }
}
