package thudbook.library.typed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.library.ChannelName;
import thudbook.library.Quantity;
import thudbook.library.Vocabulary;
import thudbook.library.Wanted;
import thudbook.library.typed.Completion.Suggestion;

/** Property: suggestions begin with what was typed, and the search understands each of them. */
class CompletionTest {
  private static final Vocabulary VOCABULARY =
      new Vocabulary(
          Map.of(
              "quick", List.of(new ChannelName("keeper-twin", "quick")),
              "keeper twin", List.of(new ChannelName("keeper-twin", null)),
              "keeper twin quick", List.of(new ChannelName("keeper-twin", "quick"))),
          Map.of(
              "dry", "dry", "crème", "Crème", "12\" plate", "12\" plate", "very dry", "very dry"),
          Map.of("oona", "Oona"));

  private final Completion completion = new Completion(VOCABULARY);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      ignoreLeadingAndTrailingWhitespace = false,
      value = {
        "ho|hold ",
        "kick, ho|kick, hold ",
        "hold|hold over ",
        "hold ov|hold over ",
        "hold over 80 ms, on qu|hold over 80 ms, on quick ",
        "kick qui|kick on quick ",
        "on keeper t|on keeper twin ",
        "tagged ve|tagged very dry ",
        "dr|tagged dry ",
        "cre|tagged Crème ",
        "plate|tagged 12 plate ",
        "by oo|by Oona ",
        "favo|favourite ",
        "with ph|with photos ",
        "reach br|reach brief "
      })
  void whatMayFollowIsSuggested(String typed, String suggested) {
    assertThat(completion.of(typed)).extracting(Suggestion::text).contains(suggested);
  }

  @Test
  void behindTheNameOfANumberStandsWhatComparesIt() {
    assertThat(completion.of("kick, hold "))
        .extracting(Suggestion::words)
        .contains("hold over", "hold between", "hold at most");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "\"slack ti", "xyzzy", "hold over 80 ms ", "-", "…"})
  void whereNothingFitsNothingIsSuggested(String typed) {
    assertThat(completion.of(typed)).isEmpty();
  }

  @Test
  void everySuggestionIsUnderstoodAndKeepsWhatStoodBefore() {
    Random random = new Random(9);
    List<String> beginnings =
        List.of(
            "h",
            "ho",
            "hold",
            "t",
            "ta",
            "tail to 4",
            "on",
            "on k",
            "by",
            "re",
            "ra",
            "pl",
            "dr",
            "made",
            "changed s",
            "w",
            "source",
            "bri",
            "th",
            "qu",
            "not on q",
            "n");
    for (int i = 0; i < 400; i++) {
      String before = random.nextBoolean() ? "kick, " : "hold over 80 ms, ";
      String typed = before + beginnings.get(random.nextInt(beginnings.size()));
      List<Suggestion> suggestions = completion.of(typed);
      assertThat(suggestions).hasSizeLessThanOrEqualTo(Completion.MOST);
      for (Suggestion suggestion : suggestions) {
        assertThat(suggestion.text()).startsWith(before).endsWith(suggestion.words() + " ");
        assertThat(TypedSearch.read(finished(suggestion), VOCABULARY, Wanted.ALL).notes())
            .as(suggestion.text())
            .isEmpty();
      }
    }
  }

  /** With a number or date behind what asks for one. */
  private static String finished(Suggestion suggestion) {
    String words = suggestion.words();
    if (words.endsWith("since")) {
      return words + " 2026";
    }
    if (words.startsWith("rated")) {
      return words + " 4";
    }
    for (Quantity quantity : Quantity.values()) {
      for (String name : quantity.names()) {
        for (Comparing comparing : Comparing.values()) {
          if (words.equals(name + " " + comparing.word())) {
            String value = quantity.dimension().write(1);
            return words + " " + value + (comparing == Comparing.BETWEEN ? " and " + value : "");
          }
        }
      }
    }
    return words;
  }
}
