package thudbook.pages.writing;

import static thudbook.pages.writing.EditorField.Look.CHOICE;
import static thudbook.pages.writing.EditorField.Look.LINE;
import static thudbook.pages.writing.EditorField.Look.LINES;
import static thudbook.pages.writing.EditorField.Look.NUMBER;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thudbook.pages.writing.EditorField.Option;
import thudbook.pages.writing.EditorField.Turn;
import thudbook.quantities.Range;

/** Puts the words of fields together; those who extend it say which. */
abstract class FieldList {
  private final Map<String, FieldWords> words = new LinkedHashMap<>();

  /** Everything so far, by name. */
  Map<String, FieldWords> words() {
    return words;
  }

  /**
   * One line of text.
   *
   * @param longest in characters; 0: goes without saying
   */
  void line(String name, String label, int longest, String help, String usual) {
    String range = longest == 0 ? "" : "At most " + longest + " characters.";
    put(name, new FieldWords(label, range, help, usual, LINE, List.of(), null));
  }

  /** A number with its unit. */
  void number(
      String name, String label, Range range, String help, String usual, @Nullable Turn turn) {
    put(name, new FieldWords(label, FieldWords.said(range), help, usual, NUMBER, List.of(), turn));
  }

  /** Some lines of text. */
  void lines(String name, String label, String range, String help, String usual) {
    put(name, new FieldWords(label, range, help, usual, LINES, List.of(), null));
  }

  /** A whole number. */
  void whole(String name, String label, String range, String help, String usual) {
    put(name, new FieldWords(label, range, help, usual, NUMBER, List.of(), null));
  }

  /** One of some words. */
  void choice(String name, String label, String help, Option... options) {
    put(name, new FieldWords(label, "", help, "", CHOICE, Arrays.asList(options), null));
  }

  /** An option that is called what it is. */
  static Option same(String word) {
    return option(word, word);
  }

  static Option option(String value, String label) {
    return Option.of(value, label);
  }

  private void put(String name, FieldWords field) {
    words.put(name, field);
  }
}
