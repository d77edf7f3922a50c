package thudbook.pages;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;

/** What is different between two forms, in a few words: "Decay 180 ms → 240 ms". */
final class ChangeWords {
  /** Further ones are only counted. */
  private static final int MOST = 3;

  private ChangeWords() {}

  static String of(Map<String, List<String>> before, Map<String, List<String>> after) {
    Set<String> names = new LinkedHashSet<>(before.keySet());
    names.addAll(after.keySet());
    names.removeIf(name -> text(before, name).equals(text(after, name)));
    StringJoiner words = new StringJoiner("; ");
    int told = 0;
    for (String name : names) {
      if (told == MOST) {
        break;
      }
      words.add(words(name, text(before, name), text(after, name)));
      told++;
    }
    if (names.size() > MOST) {
      words.add((names.size() - MOST) + " more");
    }
    return names.isEmpty() ? "saved without a change" : words.toString();
  }

  private static String words(String name, String before, String after) {
    if (name.endsWith(".kind")) {
      return name.replaceFirst(".*?([a-z]+)\\.kind$", "$1")
          + ": "
          + (after.isEmpty() ? "none" : after);
    }
    String label = FieldWords.of(name).label();
    if (before.length() + after.length() > 60) {
      return label + " changed";
    } else if (before.isEmpty()) {
      return label + " " + after;
    }
    return label + " " + before + " → " + (after.isEmpty() ? "nothing" : after);
  }

  private static String text(Map<String, List<String>> form, String name) {
    List<String> values = form.getOrDefault(name, List.of());
    return values.isEmpty() ? "" : values.get(0);
  }
}
