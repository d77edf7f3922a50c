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
  private static final String FIND = "SELECT rowid FROM recipe_words WHERE recipe_words MATCH ?";

  private final Connections connections;

  StoredWords(Connections connections) {
    this.connections = connections;
  }

  @Override
  public void find(Term term, Set<Place> places, IntConsumer keys) {
    String match = match(term, places);
    connections.read(
        db -> {
          // Hundreds of thousands of keys may come: no record is made of each.
          db.connection(
              connection -> {
                try (PreparedStatement statement = connection.prepareStatement(FIND)) {
                  statement.setString(1, match);
                  try (ResultSet rows = statement.executeQuery()) {
                    while (rows.next()) {
                      keys.accept(rows.getInt(1));
                    }
                  }
                }
              });
          return places;
        });
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
