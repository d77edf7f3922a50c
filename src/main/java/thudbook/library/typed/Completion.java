package thudbook.library.typed;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import thudbook.library.Catalogue;
import thudbook.library.Quantity;
import thudbook.library.Vocabulary;
import thudbook.predictions.Reach;

/**
 * Suggests how a typed search may go on: names of numbers and what compares them, tags, people,
 * gates and channels. What is suggested is always understood by {@link TypedSearch}.
 */
public final class Completion {
  /** How many are suggested. */
  public static final int MOST = 6;

  /** No name has more words. */
  private static final int LONGEST_NAME = 4;

  private static final List<String> PROPERTIES =
      List.of(
          "favourite",
          "incomplete",
          "with photos",
          "without photos",
          "made since",
          "changed since",
          "rated at least",
          "source fm",
          "source noise",
          "source oscillator");

  private final Vocabulary vocabulary;

  /** Suggestions from these names. */
  public Completion(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * One suggestion.
   *
   * @param words what it adds, in full
   * @param text the whole search with it, ready to be typed on
   */
  public record Suggestion(String words, String text) {}

  /**
   * What may stand at the end of a text instead of its last words, the shortest first.
   *
   * @return at most {@value #MOST}; none while a quote is open or nothing fits
   */
  public List<Suggestion> of(String text) {
    List<Lexeme> pieces = Lexeme.all(text);
    if (pieces.isEmpty() || text.length() > TypedSearch.LONGEST || endsInQuotes(text)) {
      return List.of();
    }
    boolean finished = Character.isWhitespace(text.charAt(text.length() - 1));
    // A comma ends a sentence: what follows is a new one.
    String sentence = text.substring(Math.max(text.lastIndexOf(", "), text.lastIndexOf("; ")) + 1);
    int words = Math.min(LONGEST_NAME, Lexeme.all(sentence).size());
    for (int count = words; count > 0; count--) {
      int start = startOfLast(text, count);
      String typed = Vocabulary.words(text.substring(start));
      List<String> found = typed.isEmpty() ? List.of() : continuing(typed, finished);
      if (!found.isEmpty()) {
        return found.stream()
            .map(each -> new Suggestion(each, text.substring(0, start) + each + " "))
            .toList();
      }
    }
    return List.of();
  }

  private List<String> continuing(String typed, boolean finished) {
    Collection<String> found =
        new TreeSet<>(Comparator.comparingInt(String::length).thenComparing(each -> each));
    for (String name : quantityNames()) {
      if (typed.startsWith(Vocabulary.words(name))) {
        for (Comparing comparing : Comparing.values()) {
          String sentence = name + " " + comparing.word();
          if (Vocabulary.words(sentence).startsWith(typed) && !sentence.equals(typed)) {
            found.add(sentence);
          }
        }
      }
    }
    for (String sentence : sentences()) {
      String words = Vocabulary.words(sentence);
      if (words.startsWith(finished ? typed + " " : typed) && !words.equals(typed)) {
        found.add(sentence);
      }
    }
    if (!finished) {
      names("tagged ", vocabulary.tags().values(), typed, found);
      names("by ", vocabulary.people().values(), typed, found);
      names("on ", channelNames(), typed, found);
    }
    return found.stream().limit(MOST).toList();
  }

  /** Names that begin with what was typed, or have a word that does. */
  private static void names(
      String before, Collection<String> names, String typed, Collection<String> found) {
    for (String name : names) {
      String words = Vocabulary.words(name);
      if (typed.length() > 1 && (words.startsWith(typed) || words.contains(" " + typed))) {
        found.add(before + spoken(name));
      }
    }
  }

  private List<String> sentences() {
    List<String> sentences = new ArrayList<>(PROPERTIES);
    sentences.addAll(quantityNames());
    for (Reach reach : Reach.values()) {
      sentences.add("reach " + Vocabulary.words(Catalogue.word(reach)));
    }
    vocabulary.tags().values().forEach(tag -> sentences.add("tagged " + spoken(tag)));
    vocabulary.people().values().forEach(person -> sentences.add("by " + spoken(person)));
    channelNames().forEach(channel -> sentences.add("on " + channel));
    return sentences;
  }

  /** A name as it may be typed: with its signs only where they mean nothing in a search. */
  private static String spoken(String name) {
    List<String> read =
        Lexeme.all(name).stream()
            .filter(p -> !p.quoted() && !p.minus())
            .map(Lexeme::folded)
            .toList();
    String words = Vocabulary.words(name);
    return String.join(" ", read).equals(words) ? name : words;
  }

  private Collection<String> channelNames() {
    return vocabulary.channels().keySet();
  }

  private static List<String> quantityNames() {
    List<String> names = new ArrayList<>();
    for (Quantity quantity : Quantity.values()) {
      quantity.names().stream().filter(name -> !names.contains(name)).forEach(names::add);
    }
    return names;
  }

  private static boolean endsInQuotes(String text) {
    return text.chars().filter(c -> "\"“”„«»".indexOf(c) >= 0).count() % 2 == 1;
  }

  /** Where the last so many words of a text begin. */
  private static int startOfLast(String text, int count) {
    int at = text.stripTrailing().length();
    for (int i = 0; i < count; i++) {
      while (at > 0 && Character.isWhitespace(text.charAt(at - 1))) {
        at--;
      }
      while (at > 0 && !Character.isWhitespace(text.charAt(at - 1))) {
        at--;
      }
    }
    return at;
  }
}
