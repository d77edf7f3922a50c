package thudbook.library.typed;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import thudbook.library.Catalogue;
import thudbook.library.ChannelName;
import thudbook.library.Days;
import thudbook.library.Facet;
import thudbook.library.Flag;
import thudbook.library.Quantity;
import thudbook.library.Term;
import thudbook.library.Vocabulary;
import thudbook.library.Wanted;
import thudbook.library.Words;
import thudbook.library.typed.Typed.Note;
import thudbook.predictions.Reach;

/**
 * Reads a search as it is typed: words, phrases in quotes, what is excluded, and sentences that can
 * be read aloud, such as "kick, hold over 80 ms, on quick, not dry". Nothing is ever refused as a
 * whole: what is not understood is said, and the rest holds.
 */
public final class TypedSearch {
  /** A longer text is cut; nobody types it. */
  public static final int LONGEST = 2_000;

  /** More words narrow nothing any more. */
  private static final int MOST_TERMS = 32;

  private static final int LONGEST_ECHO = 60;
  private static final Map<String, List<Quantity>> QUANTITIES = quantities();
  private static final Map<String, String> REACHES = reaches();
  private static final Map<String, String> SOURCES =
      Map.of("noise", "noise", "oscillator", "oscillator", "fm", "fm");

  private final Vocabulary vocabulary;
  private final Pieces pieces;
  private final List<String> understood = new ArrayList<>();
  private final List<Note> notes = new ArrayList<>();
  private Wanted wanted;

  private TypedSearch(Pieces pieces, Vocabulary vocabulary, Wanted wanted) {
    this.pieces = pieces;
    this.vocabulary = vocabulary;
    this.wanted = wanted;
  }

  private static Map<String, List<Quantity>> quantities() {
    Map<String, List<Quantity>> named = new TreeMap<>();
    for (Quantity quantity : Quantity.values()) {
      List<String> names = new ArrayList<>(quantity.names());
      names.add(quantity.key());
      names.stream()
          .map(Vocabulary::words)
          .distinct()
          .forEach(name -> named.computeIfAbsent(name, any -> new ArrayList<>()).add(quantity));
    }
    return named;
  }

  private static Map<String, String> reaches() {
    Map<String, String> words = new HashMap<>();
    for (Reach reach : Reach.values()) {
      words.put(Vocabulary.words(Catalogue.word(reach)), Catalogue.word(reach));
    }
    return words;
  }

  /**
   * Reads a text.
   *
   * @param also what is asked already, to which the text adds
   */
  public static Typed read(String text, Vocabulary vocabulary, Wanted also) {
    String read = text.length() > LONGEST ? text.substring(0, LONGEST) : text;
    TypedSearch search = new TypedSearch(new Pieces(Lexeme.all(read)), vocabulary, also);
    while (!search.pieces.isAtEnd()) {
      search.part();
    }
    if (read.length() < text.length()) {
      search.notes.add(
          new Note(echo(text), "Only the first " + LONGEST + " characters of a search are read."));
    }
    return new Typed(search.wanted, search.understood, search.notes);
  }

  private void part() {
    if (sentence()) {
      return;
    }
    int start = pieces.at();
    boolean negated = pieces.left() > 1 && (pieces.take("not") || pieces.take("without"));
    if (!property(start, !negated)) {
      Lexeme word = pieces.take();
      term(word, negated == word.minus());
    }
  }

  // Words
  // ------------------------------------------------------------------------------------------

  private void term(Lexeme piece, boolean included) {
    List<String> tokens = Words.of(piece.text());
    if (tokens.isEmpty()) {
      if (!piece.text().isBlank()) {
        note(piece.text(), "has neither letters nor digits: nothing is looked for.");
      }
      return;
    }
    if (wanted.words().size() + wanted.without().size() >= MOST_TERMS) {
      note(piece.text(), "is left out: a search has at most " + MOST_TERMS + " words.");
      return;
    }
    Term term = new Term(tokens, !piece.quoted());
    wanted = included ? wanted.with(term) : wanted.without(term);
    understood.add((included ? "" : "not ") + term);
  }

  // Sentences with a number or a date
  // --------------------------------------------------------------

  private boolean sentence() {
    int start = pieces.at();
    List<Quantity> quantities = pieces.takeWord(QUANTITIES);
    if (quantities != null) {
      Comparing comparing = pieces.takeWord(Comparing.NAMES);
      if (comparing != null) {
        compare(start, quantities, comparing);
        return true;
      }
    }
    pieces.goTo(start);
    return dates(start);
  }

  /** A name may stand for two quantities; the unit tells which. */
  private void compare(int start, List<Quantity> quantities, Comparing comparing) {
    int begin = pieces.at();
    String wrong = null;
    for (Quantity quantity : quantities) {
      pieces.goTo(begin);
      TypedNumber.Result result = new TypedNumber(pieces, quantity).read(comparing);
      if (result instanceof TypedNumber.Set set) {
        wanted = wanted.with(quantity, set.limits());
        understood.add(pieces.since(start));
        return;
      }
      wrong = wrong == null ? ((TypedNumber.Wrong) result).message() : wrong;
    }
    note(pieces.since(start), wrong == null ? "" : wrong);
  }

  private boolean dates(int start) {
    if (pieces.left() < 3 || (!pieces.is("made") && !pieces.is("changed"))) {
      return false;
    }
    boolean made = pieces.take().folded().equals("made");
    Days days = TypedDate.read(pieces.peek(1).text());
    Days span = TypedDate.span(pieces.take().folded(), days == null ? Days.ANY : days);
    if (span == null) {
      pieces.goTo(start);
      return false;
    }
    pieces.take();
    if (days == null) {
      note(pieces.since(start), "needs a date such as 2026-10-02, 2026-10 or 2026.");
      return true;
    }
    wanted = made ? wanted.madeIn(span) : wanted.changedIn(span);
    understood.add(pieces.since(start));
    return true;
  }

  // Properties
  // -------------------------------------------------------------------------------------

  /** Something that holds of a recipe, or must not. */
  private boolean property(int start, boolean holds) {
    if (pieces.left() > 1) {
      if (pieces.take("tagged")) {
        return named(start, Facet.TAG, vocabulary.tags(), "tag", holds);
      }
      if (pieces.take("by")) {
        return named(start, Facet.BY, vocabulary.people(), "maker of a recipe", holds);
      }
      if (pieces.is("on")) {
        return channel(start, holds);
      }
      if (pieces.is("source")) {
        return oneOf(start, Facet.SOURCE, SOURCES, holds);
      }
      if (pieces.is("reach") || pieces.is("reaches")) {
        return oneOf(start, Facet.REACH, REACHES, holds);
      }
      if (pieces.is("rated")) {
        return rated(start, holds);
      }
    }
    return flag(start, holds);
  }

  private void add(int start, Facet facet, List<String> values, boolean holds) {
    understood.add(pieces.since(start));
    for (String value : values) {
      wanted = holds ? wanted.choosing(facet, value) : wanted.refusing(facet, value);
    }
  }

  private boolean oneOf(int start, Facet facet, Map<String, String> words, boolean holds) {
    int begin = pieces.at();
    pieces.take();
    String value = pieces.takeName(words);
    if (value == null) {
      pieces.goTo(begin);
      return false;
    }
    add(start, facet, List.of(value), holds);
    return true;
  }

  private boolean named(
      int start, Facet facet, Map<String, String> names, String noun, boolean holds) {
    Map<String, String> keys = new HashMap<>();
    names.keySet().forEach(key -> keys.put(Vocabulary.words(key), key));
    String key = pieces.takeName(keys);
    if (key == null) {
      Lexeme unknown = pieces.take();
      note(unknown.text(), "is the name of no " + noun + ".");
      // What is not there leaves nothing, or takes nothing away.
      key = Words.fold(unknown.text());
    }
    add(start, facet, List.of(key), holds);
    return true;
  }

  private boolean channel(int start, boolean holds) {
    int begin = pieces.at();
    pieces.take();
    List<ChannelName> names = pieces.takeName(vocabulary.channels());
    if (names == null) {
      pieces.take();
      note(pieces.since(begin), "names no low-pass gate or channel: the words are looked for.");
      pieces.goTo(begin);
      return false;
    }
    add(start, Facet.CHANNEL, names.stream().map(ChannelName::text).toList(), holds);
    return true;
  }

  private boolean rated(int start, boolean holds) {
    int begin = pieces.at();
    pieces.take();
    boolean more = pieces.take("at least");
    boolean less = !more && pieces.take("at most");
    if (pieces.isAtEnd() || !pieces.peek().text().matches("[1-5]")) {
      if (more || less) {
        note(pieces.since(begin), "needs a number from 1 to 5.");
        return true;
      }
      pieces.goTo(begin);
      return false;
    }
    int rating = Integer.parseInt(pieces.take().text());
    List<String> values = new ArrayList<>();
    for (int value = less ? 1 : rating; value <= (more ? 5 : rating); value++) {
      values.add(String.valueOf(value));
    }
    add(start, Facet.RATING, values, holds);
    return true;
  }

  private boolean flag(int start, boolean holds) {
    Flag flag = null;
    if (pieces.take("with photos") || (!holds && pieces.take("photos"))) {
      flag = Flag.PHOTOS;
    } else if (pieces.take("favourite") || pieces.take("favourites")) {
      flag = Flag.FAVOURITE;
    } else if (pieces.take("incomplete")) {
      flag = Flag.INCOMPLETE;
    }
    if (flag == null) {
      return false;
    }
    understood.add(pieces.since(start));
    wanted = wanted.with(flag, holds);
    return true;
  }

  // What is said
  // -----------------------------------------------------------------------------------

  private void note(String found, String message) {
    notes.add(new Note(echo(found), "“" + echo(found) + "” " + message));
  }

  private static String echo(@Nullable String text) {
    String found = text == null ? "" : text;
    return found.length() > LONGEST_ECHO
        ? found.substring(0, found.offsetByCodePoints(0, found.codePointCount(0, LONGEST_ECHO)))
            + "…"
        : found;
  }
}
