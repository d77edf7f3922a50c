package thudbook.changes;

import java.util.stream.Stream;

/**
 * A noun with where its things are kept and what has to hold: all that acts on it need.
 *
 * @param <T> what kind of things
 */
public record Keeping<T extends Thing>(Noun<T> noun, Store<T> store, Rule<T> rule) {
  /** A noun of which nothing has to hold. */
  public Keeping(Noun<T> noun, Store<T> store) {
    this(noun, store, new Rule<>() {});
  }

  /** The writes of an act with what is derived from each. */
  Stream<Write<T>> complete(Act act) {
    return rule.complete(act.writes(noun), act).stream();
  }
}
