package thudbook.library;

import java.util.List;

/**
 * Words that must stand next to each other in one field.
 *
 * @param tokens folded, at least one
 * @param beginning whether the last one may be the beginning of a longer word
 */
public record Term(List<String> tokens, boolean beginning) {
  public Term {
    tokens = List.copyOf(tokens);
    if (tokens.isEmpty()) {
      throw new IllegalArgumentException("a term has at least one word");
    }
  }

  /** Whether a text, given as its words, has this term. */
  public boolean isIn(List<String> words) {
    for (int start = 0; start + tokens.size() <= words.size(); start++) {
      if (isAt(words, start)) {
        return true;
      }
    }
    return false;
  }

  private boolean isAt(List<String> words, int start) {
    int last = tokens.size() - 1;
    for (int i = 0; i < last; i++) {
      if (!words.get(start + i).equals(tokens.get(i))) {
        return false;
      }
    }
    String word = words.get(start + last);
    return beginning ? word.startsWith(tokens.get(last)) : word.equals(tokens.get(last));
  }

  /** As it is typed: a phrase in quotes matches whole words. */
  @Override
  public String toString() {
    String words = String.join(" ", tokens);
    return beginning ? words : '"' + words + '"';
  }
}
