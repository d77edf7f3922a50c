package thudbook.library;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thudbook.library.Highlight.Piece;
import thudbook.library.WordIndex.Place;
import thudbook.recipes.Recipe;

/**
 * Property: what is marked is what the search means by a word, in any spelling; the pieces are
 * always the whole text.
 */
class HighlightTest {
  /** Texts with what is to be marked in brackets. */
  @ParameterizedTest
  @CsvSource({
    "kick, Slack-tide [kick]",
    "kick, '[Kicks], [kick]-[kick], sidekick [KICK]'",
    "creme, '[Crème] brûlée, [CRÈME]'",
    "crème, a [creme] of [creme]",
    "slack tide, [slack-tide] and slack and [Slack  tide]",
    "ﬁlter, a [filter] and a [ﬁlter]",
    "2, '[½] and [2] and [²]'",
    "zo, 'ŋa [zo] שלום [zo]'",
    "nothing, a text"
  })
  void wordsAreMarkedWhereverTheSearchFindsThem(String words, String marked) {
    String bare = marked.replace("[", "").replace("]", "");
    Term term = new Term(Words.of(words), true);
    String shown =
        new Highlight(List.of(term))
            .pieces(bare).stream()
                .map(piece -> piece.found() ? "[" + piece.text() + "]" : piece.text())
                .collect(Collectors.joining());
    assertThat(shown).isEqualTo(marked);
  }

  @Test
  void piecesAreTheTextAndNeighboursDiffer() {
    Random random = new Random(4);
    String letters = "ab ÄA.-é½\uD83E\uDD41\u0301 \n\"<";
    for (int i = 0; i < 2_000; i++) {
      String text = random(random, letters, random.nextInt(30));
      List<Term> terms = new ArrayList<>();
      for (int n = random.nextInt(3); n > 0; n--) {
        List<String> words = Words.of(random(random, letters, 1 + random.nextInt(4)));
        if (!words.isEmpty()) {
          terms.add(new Term(words, random.nextBoolean()));
        }
      }
      List<Piece> pieces = new Highlight(terms).pieces(text);
      assertThat(pieces.stream().map(Piece::text).collect(Collectors.joining())).isEqualTo(text);
      for (int k = 1; k < pieces.size(); k++) {
        assertThat(pieces.get(k).found()).isNotEqualTo(pieces.get(k - 1).found());
      }
      assertThat(pieces.stream().anyMatch(Piece::found))
          .as("%s in %s", terms, text)
          .isEqualTo(terms.stream().anyMatch(term -> term.isIn(Words.of(text))));
    }
  }

  @Test
  void whatNoRowShowsIsShownFromTheNotesCutBetweenWords() {
    String notes = "one two ".repeat(40) + "the foghorn is next door " + "three four ".repeat(40);
    Recipe recipe = recipe(notes);
    Highlight highlight = new Highlight(List.of(new Term(List.of("foghorn"), true)));
    Highlight.Extract extract = highlight.extract(recipe, List.of("Thud", "dry"), 80).orElseThrow();
    String text = extract.pieces().stream().map(Piece::text).collect(Collectors.joining());
    assertThat(extract.place()).isEqualTo(Place.NOTES);
    assertThat(extract.pieces()).contains(new Piece("foghorn", true));
    assertThat(text.length()).isLessThanOrEqualTo(84);
    assertThat(text).matches("….*…");
    assertThat(notes).contains(text.substring(1, text.length() - 1));
    assertThat(" " + notes.replace(" ", "  ") + " ")
        .as("no word is cut")
        .contains(" " + text.substring(1, text.length() - 1).strip().replace(" ", "  ") + " ");
    assertThat(highlight.extract(recipe, List.of("Foghorns"), 80)).isEmpty();
  }

  private static Recipe recipe(String notes) {
    return new Recipe(
        new UUID(0, 1),
        "thud",
        "Thud",
        List.of("dry"),
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        List.of(),
        null,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        notes);
  }

  private static String random(Random random, String letters, int length) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < length; i++) {
      text.append(letters.charAt(random.nextInt(letters.length())));
    }
    return text.toString();
  }
}
