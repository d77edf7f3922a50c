package thudbook.library.typed;

import java.util.List;
import java.util.Map;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;

/** The pieces of a typed search, and how far they are read. */
final class Pieces {
  /** No name that is looked up has more words. */
  private static final int LONGEST_NAME = 8;

  private final List<Lexeme> pieces;
  private int at;

  Pieces(List<Lexeme> pieces) {
    this.pieces = pieces;
  }

  int at() {
    return at;
  }

  void goTo(int place) {
    at = Math.min(place, pieces.size());
  }

  boolean isAtEnd() {
    return at >= pieces.size();
  }

  /** How many are left to be read. */
  int left() {
    return pieces.size() - at;
  }

  /** The piece that is read next. */
  Lexeme peek() {
    return pieces.get(at);
  }

  /** A piece behind the one that is read next. */
  Lexeme peek(int behind) {
    return pieces.get(at + behind);
  }

  /** Reads a piece. */
  Lexeme take() {
    return pieces.get(at++);
  }

  /** Whether some words come next, outside quotes. */
  boolean is(String words) {
    int count = words.split(" ", -1).length;
    return joined(count, false).equals(words);
  }

  /** Reads some words if they come next, outside quotes. */
  boolean take(String words) {
    if (is(words)) {
      at += words.split(" ", -1).length;
      return true;
    }
    return false;
  }

  /**
   * So many pieces, folded; empty where there are fewer, or one is excluded or, but for a name that
   * stands alone in quotes, quoted.
   */
  private String joined(int count, boolean name) {
    if (count > left()) {
      return "";
    }
    StringJoiner words = new StringJoiner(" ");
    for (int i = 0; i < count; i++) {
      Lexeme piece = peek(i);
      if (piece.minus() || (piece.quoted() && !(name && count == 1))) {
        return "";
      }
      words.add(piece.folded());
    }
    return words.toString();
  }

  /** Reads the longest name that comes next and gives what it stands for; null: there is none. */
  <T> @Nullable T takeName(Map<String, T> names) {
    return take(names, true);
  }

  /** The same of the language's own words, which never stand in quotes. */
  <T> @Nullable T takeWord(Map<String, T> words) {
    return take(words, false);
  }

  private <T> @Nullable T take(Map<String, T> names, boolean name) {
    for (int count = Math.min(LONGEST_NAME, left()); count > 0; count--) {
      T value = names.get(joined(count, name));
      if (value != null) {
        at += count;
        return value;
      }
    }
    return null;
  }

  /** What was read from a place on, as it was typed. */
  String since(int start) {
    StringJoiner words = new StringJoiner(" ");
    for (Lexeme piece : pieces.subList(start, Math.min(at, pieces.size()))) {
      words.add(piece.text());
    }
    return words.toString();
  }
}
