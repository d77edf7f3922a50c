package thudbook.documents;

import java.util.List;
import thudbook.recipes.Act;

/** The texts of everything that a notebook holds and that is not in the bin, a few at a time. */
public interface DocumentStore {
  /**
   * The texts of gates, in the order of their keys.
   *
   * @param after only keys above this one; 0: from the first on
   */
  List<Kept> gates(long after, int limit);

  /** The texts of recipes, likewise. */
  List<Kept> recipes(long after, int limit);

  /**
   * The texts of modules or of sessions, likewise.
   *
   * @param noun MODULE or SESSION
   */
  List<Kept> plain(Act.Noun noun, long after, int limit);

  /**
   * A text.
   *
   * @param key of its noun in this store
   */
  record Kept(long key, String slug, String document) {}
}
