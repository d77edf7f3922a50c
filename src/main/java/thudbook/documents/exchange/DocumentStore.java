package thudbook.documents.exchange;

import java.util.List;
import thudbook.changes.Noun;

/** The texts of everything that a notebook holds and that is not in the bin, a few at a time. */
public interface DocumentStore {
  /**
   * The texts of things of a noun, in the order of their keys.
   *
   * @param after only keys above this one; 0: from the first on
   */
  List<Text> texts(Noun<?> noun, long after, int limit);

  /**
   * A text.
   *
   * @param key of its thing in this store
   */
  record Text(long key, String slug, String document) {}
}
