package thudbook.storage;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.util.Set;
import java.util.function.IntConsumer;
import java.util.stream.Collectors;
import thudbook.library.Term;
import thudbook.library.WordIndex;

/** The index of words. What a person typed comes here as words of letters and digits only. */
final class StoredWords implements WordIndex {
  /**
   * All keys in one text: fetched row by row, hundreds of thousands of them take twice the time.
   */
  private static final String FIND =
      "SELECT group_concat(key, ' ') FROM"
          + " (SELECT rowid AS key FROM recipe_words WHERE recipe_words MATCH ? ORDER BY rowid)";

  private final Connections connections;

  StoredWords(Connections connections) {
    this.connections = connections;
  }

  @Override
  public void find(Term term, Set<Place> places, IntConsumer keys) {
    String match = match(term, places);
    connections.read(
        db -> {
          db.connection(
              connection -> {
                try (PreparedStatement statement = connection.prepareStatement(FIND)) {
                  statement.setString(1, match);
                  try (ResultSet rows = statement.executeQuery()) {
                    String found = rows.next() ? rows.getString(1) : null;
                    if (found != null) {
                      each(found, keys);
                    }
                  }
                }
              });
          return places;
        });
  }

  /** Reads numbers with one space between. */
  private static void each(String found, IntConsumer keys) {
    int key = 0;
    for (int i = 0; i < found.length(); i++) {
      char c = found.charAt(i);
      if (c == ' ') {
        keys.accept(key);
        key = 0;
      } else {
        key = 10 * key + (c - '0');
      }
    }
    keys.accept(key);
  }

  /** A term in the language of the index: {@code {title heard} : "tide ki" *}. */
  static String match(Term term, Set<Place> places) {
    String phrase = '"' + String.join(" ", term.tokens()) + '"' + (term.beginning() ? " *" : "");
    if (places.size() == Place.values().length) {
      return phrase;
    }
    return places.stream()
        .sorted()
        .map(FactRows::column)
        .collect(Collectors.joining(" ", "{", "} : " + phrase));
  }
}
