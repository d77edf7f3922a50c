package thudbook.documents.tree;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.CoreSchema;
import thudbook.documents.Slugs;

/**
 * Reference: text that is written plain is text to every reader. For YAML 1.2 its core schema, read
 * by the library; for YAML 1.1 the patterns of its type repository (yaml.org/type: bool, null, int,
 * float, timestamp, merge, value; from memory).
 */
class TextsTest {
  private static final List<Pattern> YAML_1_1 =
      List.of(
          Pattern.compile(
              "y|Y|yes|Yes|YES|n|N|no|No|NO|true|True|TRUE|false|False|FALSE|on|On|ON|off|Off|OFF"),
          Pattern.compile("~|null|Null|NULL|"),
          Pattern.compile("[-+]?0b[0-1_]+"),
          Pattern.compile("[-+]?0[0-7_]+"),
          Pattern.compile("[-+]?(0|[1-9][0-9_]*)"),
          Pattern.compile("[-+]?0x[0-9a-fA-F_]+"),
          Pattern.compile("[-+]?[1-9][0-9_]*(:[0-5]?[0-9])+(\\.[0-9_]*)?"),
          Pattern.compile("[-+]?([0-9][0-9_]*)?\\.[0-9.]*([eE][-+][0-9]+)?"),
          Pattern.compile("[-+]?\\.(inf|Inf|INF)|\\.(nan|NaN|NAN)"),
          Pattern.compile("[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}.*"),
          Pattern.compile("<<|="));

  private static final String[] PIECES = {
    "y",
    "N",
    "no",
    "on",
    "Off",
    "true",
    "NULL",
    "e",
    "1",
    "0",
    "x",
    "b",
    "_",
    ".",
    ":",
    "-",
    "+",
    " ",
    "#",
    ",",
    "[",
    "{",
    "&",
    "*",
    "!",
    "|",
    ">",
    "'",
    "\"",
    "\\",
    "%",
    "@",
    "`",
    "~",
    "=",
    "<<",
    "?",
    "é",
    "日",
    "🥁",
    "inf",
    "NaN",
    "2026-10-02"
  };

  @ParameterizedTest
  @CsvSource({
    "Slack-tide kick, true",
    "kick, true",
    "Größe 7, true",
    "A1, true",
    "x, true",
    "Yes please, true",
    "no, false",
    "No, false",
    "nO, false",
    "y, false",
    "on, false",
    "null, false",
    "~, false",
    "012, false",
    "2026-10-02, false",
    "10:30, false",
    "808 kick, false",
    "-6 dB, false",
    "a. b, false",
    "a_b, false",
    "日本, false"
  })
  void isPlainOrQuoted(String text, boolean plain) {
    assertThat(Texts.yaml(text)).isEqualTo(plain ? text : '"' + text + '"');
  }

  @Test
  void everyReaderTakesItForText() {
    Random random = new Random(12);
    Load load = new Load(LoadSettings.builder().setSchema(new CoreSchema()).build());
    for (int i = 0; i < 20_000; i++) {
      StringBuilder words = new StringBuilder();
      for (int n = 1 + random.nextInt(4); n > 0; n--) {
        words.append(PIECES[random.nextInt(PIECES.length)]);
      }
      String text = words.toString().strip();
      String written = Texts.yaml(text);
      assertThat(load.loadFromString("k: " + written + "\nl: [" + written + ", 1]\n").toString())
          .isEqualTo("{k=" + text + ", l=[" + text + ", 1]}");
      if (written.equals(text)) {
        assertThat(YAML_1_1).noneMatch(pattern -> pattern.matcher(text).matches());
        assertThat(load.loadFromString(written)).isInstanceOf(String.class);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"5f0c1d1e-8f0a-4b39-9a55-1f6f6a1c7d02", "00000000-0000-0000-0000-000000000000"})
  void anIdIsTextWithoutQuotes(String id) {
    assertThat(YAML_1_1).noneMatch(pattern -> pattern.matcher(id).matches());
    assertThat(new Load(LoadSettings.builder().build()).loadFromString(id)).isEqualTo(id);
  }

  @ParameterizedTest
  @CsvSource({
    "Slack-tide kick, slack-tide-kick",
    "Bell buoy, bell-buoy",
    "'Bell buoy, held', bell-buoy-held",
    "Keeper's glass, keepers-glass",
    "  Größe & Łódź  , grosse-odz",
    "Café Ⅳ, cafe-iv",
    "808, 808",
    "日本, untitled",
    "---, untitled"
  })
  void slugs(String title, String slug) {
    assertThat(Slugs.of(title)).isEqualTo(slug);
    assertThat(Texts.isSlug(slug)).isTrue();
  }

  @Test
  void aLongTitleMakesASlug() {
    assertThat(Slugs.of("ab ".repeat(60))).hasSizeLessThanOrEqualTo(60).matches(Texts::isSlug);
  }
}
