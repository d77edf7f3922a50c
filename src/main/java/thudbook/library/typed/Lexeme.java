package thudbook.library.typed;

import java.util.ArrayList;
import java.util.List;
import thudbook.library.Vocabulary;

/**
 * A piece of a typed search.
 *
 * @param text without quotes and minus
 * @param folded its words, folded, with single spaces
 * @param quoted whether it stood in quotes
 * @param minus whether a minus stood before it
 */
record Lexeme(String text, String folded, boolean quoted, boolean minus) {
  private static final String OPENING = "\"“”„«»";

  private static Lexeme of(String text, boolean quoted, boolean minus) {
    return new Lexeme(text, Vocabulary.words(text), quoted, minus);
  }

  /** The pieces of a text, in order. A quote that is never closed ends with the text. */
  static List<Lexeme> all(String text) {
    List<Lexeme> pieces = new ArrayList<>();
    int at = 0;
    while (at < text.length()) {
      if (separates(text, at)) {
        at++;
        continue;
      }
      boolean minus = isMinus(text, at);
      int start = minus ? at + 1 : at;
      if (OPENING.indexOf(text.charAt(start)) >= 0) {
        int end = start + 1;
        while (end < text.length() && OPENING.indexOf(text.charAt(end)) < 0) {
          end++;
        }
        pieces.add(of(text.substring(start + 1, end), true, minus));
        at = end + 1;
      } else {
        int end = start;
        while (end < text.length()
            && !separates(text, end)
            && OPENING.indexOf(text.charAt(end)) < 0) {
          end++;
        }
        pieces.add(of(text.substring(start, end), false, minus));
        at = end;
      }
    }
    return pieces;
  }

  /** A minus excludes what follows it at once; before a digit it is the sign of a number. */
  private static boolean isMinus(String text, int at) {
    if (text.charAt(at) != '-' && text.charAt(at) != '−') {
      return false;
    }
    if (at + 1 >= text.length() || separates(text, at + 1)) {
      return false;
    }
    char next = text.charAt(at + 1);
    return !Character.isDigit(next) && next != '.';
  }

  /** Spaces and control characters do, and a comma or semicolon that is followed by one. */
  private static boolean separates(String text, int at) {
    char c = text.charAt(at);
    if (Character.isWhitespace(c) || Character.isSpaceChar(c) || Character.isISOControl(c)) {
      return true;
    }
    return (c == ',' || c == ';') && (at + 1 == text.length() || separates(text, at + 1));
  }
}
