package thudbook.library;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.regex.MatchResult;
import thudbook.library.WordIndex.Place;
import thudbook.recipes.Recipe;

/** Where the terms of a search stand in texts: what was found is marked for the reader. */
public final class Highlight {
  /** The places that no row of the list shows, those that a reader thinks of first in front. */
  private static final List<Place> HIDDEN = List.of(Place.NOTES, Place.PEOPLE, Place.GEAR);

  private static final String CUT = "…";

  private final List<Term> terms;

  /** Marks these terms. */
  public Highlight(List<Term> terms) {
    this.terms = List.copyOf(terms);
  }

  /**
   * A piece of a text, unescaped. All pieces in a row are the text.
   *
   * @param found whether a term stands there
   */
  public record Piece(String text, boolean found) {}

  /**
   * A part of a text that a row does not show.
   *
   * @param pieces as long as asked for, or shorter
   */
  public record Extract(Place place, List<Piece> pieces) {
    public Extract {
      pieces = List.copyOf(pieces);
    }
  }

  /** A word of a text and where it stands; one place may hold several, such as those of ½. */
  private record Word(String folded, int start, int end) {}

  /** The text in pieces: whole words that belong to a term, and what is between them. */
  public List<Piece> pieces(String text) {
    return pieces(text, found(text), 0, text.length());
  }

  /** Whether every term stands in one of some texts. */
  public boolean isSeenIn(List<String> texts) {
    return terms.stream().allMatch(term -> isIn(term, texts));
  }

  private static boolean isIn(Term term, List<String> texts) {
    return texts.stream().anyMatch(text -> term.isIn(Words.of(text)));
  }

  /**
   * What to show of a recipe so that a reader sees why it was found: a part of the first text that
   * has a term which none of the shown texts has.
   *
   * @param shown what the reader sees already
   * @param length at most so many characters
   * @return empty if every term is seen already
   */
  public Optional<Extract> extract(Recipe recipe, List<String> shown, int length) {
    List<Term> unseen = terms.stream().filter(term -> !isIn(term, shown)).toList();
    if (unseen.isEmpty()) {
      return Optional.empty();
    }
    for (Place place : HIDDEN) {
      for (String text : RecipeFacts.texts(recipe).getOrDefault(place, List.of())) {
        int at = new Highlight(unseen).found(text).nextSetBit(0);
        if (at >= 0) {
          return Optional.of(new Extract(place, around(text, at, length)));
        }
      }
    }
    return Optional.empty();
  }

  /** A part of a text that begins a little before a place, between words. */
  private List<Piece> around(String text, int at, int length) {
    int start = Math.max(0, at - length / 3);
    int end = Math.min(text.length(), start + length);
    for (MatchResult word : Words.places(text)) {
      if (start > word.start() && start < word.end()) {
        start = word.end() <= at ? word.end() : word.start();
      }
      if (end > word.start() && end < word.end()) {
        end = word.start() > at ? word.start() : word.end();
      }
    }
    List<Piece> pieces = new ArrayList<>();
    if (start > 0) {
      pieces.add(new Piece(CUT, false));
    }
    pieces.addAll(pieces(text, found(text), start, end));
    if (end < text.length()) {
      pieces.add(new Piece(CUT, false));
    }
    return pieces;
  }

  private static List<Piece> pieces(String text, BitSet found, int start, int end) {
    List<Piece> pieces = new ArrayList<>();
    int at = start;
    while (at < end) {
      boolean marked = found.get(at);
      int change = marked ? found.nextClearBit(at) : found.nextSetBit(at);
      int until = change < 0 ? end : Math.min(change, end);
      pieces.add(new Piece(text.substring(at, until), marked));
      at = until;
    }
    return pieces;
  }

  /** The characters that belong to a term, with what is between the words of a phrase. */
  private BitSet found(String text) {
    BitSet found = new BitSet(text.length());
    if (terms.isEmpty()) {
      return found;
    }
    List<Word> words = words(text);
    List<String> folded = words.stream().map(Word::folded).toList();
    for (Term term : terms) {
      int length = term.tokens().size();
      for (int i = 0; i + length <= words.size(); i++) {
        if (term.isIn(folded.subList(i, i + length))) {
          found.set(words.get(i).start(), words.get(i + length - 1).end());
        }
      }
    }
    return found;
  }

  private static List<Word> words(String text) {
    List<Word> words = new ArrayList<>();
    for (MatchResult place : Words.places(text)) {
      for (String folded : Words.of(place.group())) {
        words.add(new Word(folded, place.start(), place.end()));
      }
    }
    return words;
  }
}
