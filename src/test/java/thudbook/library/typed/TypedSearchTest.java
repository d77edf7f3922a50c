package thudbook.library.typed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.library.ChannelName;
import thudbook.library.Days;
import thudbook.library.Facet;
import thudbook.library.Flag;
import thudbook.library.Limits;
import thudbook.library.Quantity;
import thudbook.library.Term;
import thudbook.library.Vocabulary;
import thudbook.library.Wanted;

/**
 * Property: a typed search means what it says when it is read aloud, and nothing ever breaks it.
 */
class TypedSearchTest {
  private static final Vocabulary STUDIO =
      new Vocabulary(
          Map.of(
              "keeper twin", List.of(new ChannelName("keeper-twin", null)),
              "quick",
                  List.of(
                      new ChannelName("keeper-twin", "quick"),
                      new ChannelName("storm-door", "quick")),
              "keeper twin quick", List.of(new ChannelName("keeper-twin", "quick"))),
          Map.of("dry", "Dry", "second act", "Second act"),
          Map.of("oona", "Oona", "old tom", "Old Tom"));

  private static Typed read(String text) {
    return TypedSearch.read(text, STUDIO, Wanted.ALL);
  }

  private static Wanted wanted(String text) {
    Typed typed = read(text);
    assertThat(typed.notes()).as(text).isEmpty();
    return typed.wanted();
  }

  private static Term word(String... tokens) {
    return new Term(List.of(tokens), true);
  }

  @Test
  void wordsPhrasesAndWhatIsExcluded() {
    assertThat(wanted("Kick slack-tide"))
        .isEqualTo(Wanted.ALL.with(word("kick")).with(word("slack", "tide")));
    assertThat(wanted("“short, WOODY” -wet"))
        .isEqualTo(
            Wanted.ALL.with(new Term(List.of("short", "woody"), false)).without(word("wet")));
    assertThat(wanted("not dry, without \"the boat\""))
        .isEqualTo(
            Wanted.ALL.without(word("dry")).without(new Term(List.of("the", "boat"), false)));
    assertThat(wanted("Élan")).isEqualTo(wanted("elan"));
    assertThat(wanted("never closed \"quote")).isEqualTo(wanted("never closed \"quote\""));
  }

  @ParameterizedTest
  @CsvSource({
    "hold over 80 ms, HOLD, 0.08, false, , false",
    "hold at least 0.08s, HOLD, 0.08, true, , false",
    "release40 between 0.2 and 0.4 s, RELEASE_40, 0.2, true, 0.4, true",
    "release40 between 400 ms and 0.2 s, RELEASE_40, 0.2, true, 0.4, true",
    "tail to 40 under 1 s, RELEASE_40, , false, 1, false",
    "tail shorter than 150ms, RELEASE_40, , false, 0.15, false",
    "peak over 5 V, PEAK, 5, false, , false",
    "peak over -3 dB, PEAK_DB, -3, false, , false",
    "thump at most 500 mV, THUMP_PEAK, , false, 0.5, true",
    "index over 2, INDEX, 2, false, , false",
    "carrier up to 1.2 kHz, CARRIER, , false, 1200, true",
    "ignored share above 50 %, IGNORED_SHARE, 0.5, false, , false",
    "brightness at 20 below 400 Hz, BRIGHTNESS_AT_20, , false, 400, false",
    "decay about 200 ms, DECAY, 0.18, true, 0.22, true",
    "peak level about -6 dB, PEAK_DB, -7, true, -5, true",
    "openness about 50 %, PEAK_OPENNESS, 0.45, true, 0.55, true",
    "build-up over 1 dB, BUILD_UP, 1, false, , false"
  })
  void numbersWithTheirUnits(
      String text,
      Quantity quantity,
      Double from,
      boolean fromItself,
      Double to,
      boolean toItself) {
    Wanted wanted = wanted(text);
    assertThat(wanted.words()).isEmpty();
    assertThat(wanted.limits()).containsOnlyKeys(quantity);
    Limits limits = wanted.limits().get(quantity);
    close(limits.from(), from);
    close(limits.to(), to);
    assertThat(limits.fromItself()).isEqualTo(fromItself);
    assertThat(limits.toItself()).isEqualTo(toItself);
  }

  private static void close(Double found, Double expected) {
    if (expected == null) {
      assertThat(found).isNull();
    } else {
      assertThat(found).isCloseTo(expected, within(1e-12));
    }
  }

  @Test
  void sentencesOfEveryKind() {
    assertThat(wanted("on quick"))
        .isEqualTo(
            Wanted.ALL
                .choosing(Facet.CHANNEL, "keeper-twin/quick")
                .choosing(Facet.CHANNEL, "storm-door/quick"));
    assertThat(wanted("not on Keeper twin quick"))
        .isEqualTo(Wanted.ALL.refusing(Facet.CHANNEL, "keeper-twin/quick"));
    assertThat(wanted("tagged second act, not tagged dry"))
        .isEqualTo(Wanted.ALL.choosing(Facet.TAG, "second act").refusing(Facet.TAG, "dry"));
    assertThat(wanted("by old Tom")).isEqualTo(Wanted.ALL.choosing(Facet.BY, "old tom"));
    assertThat(wanted("source fm, reach idle-open"))
        .isEqualTo(Wanted.ALL.choosing(Facet.SOURCE, "fm").choosing(Facet.REACH, "idle-open"));
    assertThat(wanted("rated at least 4"))
        .isEqualTo(Wanted.ALL.choosing(Facet.RATING, "4").choosing(Facet.RATING, "5"));
    assertThat(wanted("favourite with photos not incomplete"))
        .isEqualTo(
            Wanted.ALL
                .with(Flag.FAVOURITE, true)
                .with(Flag.PHOTOS, true)
                .with(Flag.INCOMPLETE, false));
    assertThat(wanted("without photos")).isEqualTo(Wanted.ALL.with(Flag.PHOTOS, false));
    assertThat(wanted("made in 2026-10 changed since 2026-11-02"))
        .isEqualTo(
            Wanted.ALL
                .madeIn(new Days(LocalDate.of(2026, 10, 1), LocalDate.of(2026, 10, 31)))
                .changedIn(new Days(LocalDate.of(2026, 11, 2), null)));
    assertThat(wanted("made before 2026 changed after 2026-11"))
        .isEqualTo(
            Wanted.ALL
                .madeIn(new Days(null, LocalDate.of(2025, 12, 31)))
                .changedIn(new Days(LocalDate.of(2026, 12, 1), null)));
    assertThat(wanted("dry kick hold over 80 ms on quick not wet"))
        .isEqualTo(
            Wanted.ALL
                .with(word("dry"))
                .with(word("kick"))
                .with(Quantity.HOLD, new Limits(0.08, false, null, false))
                .choosing(Facet.CHANNEL, "keeper-twin/quick")
                .choosing(Facet.CHANNEL, "storm-door/quick")
                .without(word("wet")));
  }

  @Test
  void wordsOfTheLanguageAreWordsWhereTheySayNothing() {
    assertThat(wanted("hold")).isEqualTo(Wanted.ALL.with(word("hold")));
    assertThat(wanted("hold the line"))
        .isEqualTo(Wanted.ALL.with(word("hold")).with(word("the")).with(word("line")));
    assertThat(wanted("not")).isEqualTo(Wanted.ALL.with(word("not")));
    assertThat(wanted("by")).isEqualTo(Wanted.ALL.with(word("by")));
    assertThat(wanted("made it")).isEqualTo(Wanted.ALL.with(word("made")).with(word("it")));
    assertThat(wanted("\"on\" quick"))
        .isEqualTo(Wanted.ALL.with(new Term(List.of("on"), false)).with(word("quick")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "kick hold over 80|“hold over 80” needs a time with its unit, such as 80 ms.",
        "kick hold over 1,5 ms|“hold over 1,5 ms” has a decimal comma: write 1.5 ms.",
        "kick hold over|“hold over” needs a number, such as 30 ms.",
        "kick hold over 80 Hz|“hold over 80 Hz” is not understood: hold is compared with a number such as 30 ms.",
        "kick hold between 80 ms|“hold between 80” needs two numbers, such as between 5 ms and 200 ms.",
        "kick on nowhere|“on nowhere” names no low-pass gate or channel: the words are looked for.",
        "kick tagged nothing|“nothing” is the name of no tag.",
        "kick by nobody|“nobody” is the name of no maker of a recipe.",
        "kick changed since yesterday|“changed since yesterday” needs a date such as 2026-10-02, 2026-10 or 2026.",
        "kick rated at least 9|“rated at least” needs a number from 1 to 5.",
        "kick !!|“!!” has neither letters nor digits: nothing is looked for."
      })
  void whatIsNotUnderstoodIsSaidAndTheRestHolds(String text, String message) {
    Typed typed = read(text);
    assertThat(typed.notes()).extracting(Typed.Note::message).containsExactly(message);
    assertThat(typed.wanted().words().get(0)).isEqualTo(word("kick"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"",
        "-",
        "--",
        "- -",
        "\"\"",
        "-\"\"",
        "NOT",
        "not not not",
        "AND OR NEAR(a b)",
        "a* ^b",
        "title:kick",
        "{title}: x",
        "'; DROP TABLE recipe; --",
        "\u0000\u0001",
        "🥁🥁",
        "-🥁",
        "שלום עולם",
        "مرحبا",
        "\u202Eevil",
        "a\u0301",
        "\uD800",
        "hold over hold over hold",
        "between and and",
        "hold between and",
        "rated",
        "rated at least",
        "tagged",
        "on",
        "made in",
        "%",
        "_",
        "\\",
        "hold over 99999999999999999999999999 s",
        "hold over -0 ms",
        "1e999",
        "peak over",
        "not on",
        "without",
        "changed before 0000",
        "made in 9999",
        "made in 2026-13"
      })
  void everyStringIsRead(String text) {
    Typed typed = read(text);
    assertThat(typed.wanted()).isNotNull();
  }

  @Test
  @Timeout(value = 20, unit = TimeUnit.SECONDS)
  void tenThousandCharactersAndRandomBytesAreRead() {
    for (String piece :
        List.of("a", "a ", "\"", "-", "hold over ", "not ", "on ", "é", "🥁", "(")) {
      Typed typed = read(piece.repeat(10_000 / piece.length()));
      assertThat(typed.wanted().words().size() + typed.wanted().without().size())
          .isLessThanOrEqualTo(32);
      assertThat(typed.notes()).isNotEmpty();
    }
    Random random = new Random(6);
    for (int i = 0; i < 500; i++) {
      byte[] bytes = new byte[random.nextInt(200)];
      random.nextBytes(bytes);
      assertThat(read(new String(bytes, StandardCharsets.ISO_8859_1)).wanted()).isNotNull();
      assertThat(read(new String(bytes, StandardCharsets.UTF_8)).wanted()).isNotNull();
    }
  }
}
