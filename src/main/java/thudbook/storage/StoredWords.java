package thudbook.storage;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.util.List;
import thudbook.library.Term;
import thudbook.library.WordIndex;

/**
 * The index of words. What a person typed comes here as words of letters and digits only. The texts
 * of one recipe are a row for each rank, so that one look finds a term in all of them and tells
 * where it stands.
 */
final class StoredWords implements WordIndex {
  /**
   * All rows in one text: fetched row by row, hundreds of thousands of them take twice the time.
   */
  private static final String FIND =
      "SELECT CAST(group_concat(rowid, ' ') AS BLOB) FROM recipe_words WHERE recipe_words MATCH ?";

  /** In the order of a recipe's rows. */
  private static final List<Rank> RANKS = List.of(Rank.TITLE, Rank.HEARD, Rank.ELSEWHERE);

  private final Connections connections;

  StoredWords(Connections connections) {
    this.connections = connections;
  }

  /** The row of a recipe's texts of a rank. */
  static long row(long recipe, Rank rank) {
    return recipe * RANKS.size() + RANKS.indexOf(rank);
  }

  @Override
  public void find(Term term, Hits hits) {
    String match = match(term);
    byte[] found =
        connections.read(
            db ->
                db.connectionResult(
                    connection -> {
                      try (PreparedStatement statement = connection.prepareStatement(FIND)) {
                        statement.setString(1, match);
                        try (ResultSet rows = statement.executeQuery()) {
                          byte[] text = rows.next() ? rows.getBytes(1) : null;
                          return text == null ? new byte[0] : text;
                        }
                      }
                    }));
    each(found, hits);
  }

  /** Reads numbers with one space between. */
  private static void each(byte[] found, Hits hits) {
    long row = 0;
    for (byte c : found) {
      if (c == ' ') {
        add(row, hits);
        row = 0;
      } else {
        row = 10 * row + (c - '0');
      }
    }
    if (found.length > 0) {
      add(row, hits);
    }
  }

  private static void add(long row, Hits hits) {
    hits.add(RANKS.get((int) (row % RANKS.size())), (int) (row / RANKS.size()));
  }

  /** A term in the language of the index: {@code "tide ki" *}. */
  static String match(Term term) {
    return '"' + String.join(" ", term.tokens()) + '"' + (term.beginning() ? " *" : "");
  }
}
