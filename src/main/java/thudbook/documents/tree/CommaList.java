package thudbook.documents.tree;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Words in one field, with commas between them. A word that has a comma itself, or begins with a
 * double quote, stands in double quotes, and quotes within it are doubled.
 */
final class CommaList {
  private CommaList() {}

  /** The words of a field; blank ones are left out. */
  static List<String> read(String text) {
    List<String> words = new ArrayList<>();
    int at = 0;
    while (at < text.length()) {
      int end = endOfQuoted(text, at);
      if (end < 0) {
        int comma = text.indexOf(',', at);
        end = comma < 0 ? text.length() : comma;
        words.add(text.substring(at, end).strip());
      } else {
        String quoted = text.substring(at, end).strip();
        words.add(quoted.substring(1, quoted.length() - 1).replace("\"\"", "\"").strip());
      }
      at = end + 1;
    }
    words.removeIf(String::isBlank);
    return words;
  }

  /** Where a quoted word ends, at its comma or at the end; -1 if the word is not a quoted one. */
  private static int endOfQuoted(String text, int start) {
    int at = start;
    while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
      at++;
    }
    if (at >= text.length() || text.charAt(at) != '"') {
      return -1;
    }
    for (at++; at < text.length(); at++) {
      if (text.charAt(at) != '"') {
        continue;
      }
      if (at + 1 < text.length() && text.charAt(at + 1) == '"') {
        at++;
        continue;
      }
      for (at++; at < text.length() && Character.isWhitespace(text.charAt(at)); at++) {
        // Only spaces may stand between the closing quote and the comma.
      }
      return at == text.length() || text.charAt(at) == ',' ? at : -1;
    }
    return -1;
  }

  /** The field that reads back as these words. */
  static String write(List<String> words) {
    return words.stream()
        .map(
            word ->
                word.contains(",") || word.startsWith("\"")
                    ? '"' + word.replace("\"", "\"\"") + '"'
                    : word)
        .collect(Collectors.joining(", "));
  }
}
