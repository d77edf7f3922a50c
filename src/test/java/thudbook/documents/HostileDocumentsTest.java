package thudbook.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/** Property: whatever comes, a document is read or refused, soon, and nothing else happens. */
@Timeout(60)
class HostileDocumentsTest {
  private static final String HEAD = "---\nthudbook: recipe/1\ntitle: Kick\n";
  private static final int DEEP = 50_000;

  static Stream<String> hostile() {
    return Stream.of(
        HEAD + "tags: " + "[".repeat(DEEP) + "\n---\n",
        HEAD + "tags: " + "[".repeat(DEEP) + "]".repeat(DEEP) + "\n---\n",
        HEAD + "source: " + "{a: ".repeat(DEEP) + "\n---\n",
        HEAD + "tags:\n  " + "- ".repeat(DEEP) + "a\n---\n",
        HEAD + "tags:\n  " + "? ".repeat(DEEP) + "a\n---\n",
        HEAD + "tags: [" + "a, ".repeat(80_000) + "]\n---\n",
        HEAD + "tags: [" + "[],".repeat(70_000) + "]\n---\n",
        HEAD + "a: &a [x, x]\nb: &b [*a, *a]\nc: &c [*b, *b]\nd: [*c, *c]\n---\n",
        HEAD + "source: {<<: *a}\n---\n",
        HEAD + "by: !!javax.script.ScriptEngineManager [x]\n---\n",
        HEAD + "\"" + "k".repeat(200_000) + "\": 1\n---\n",
        HEAD + "by: \"" + "\\x41".repeat(60_000) + "\"\n---\n",
        HEAD + "rating: " + "9".repeat(200_000) + "\n---\n",
        HEAD + "output: {coupling: 1." + "0".repeat(200_000) + " Hz}\n---\n",
        HEAD + "%YAML 1.1\n---\n",
        "---\n%YAML 1.1\n--- \ntitle: x\n---\n",
        HEAD + "by: a\u0000b\n---\n",
        HEAD + "by: \u0085\n---\n",
        HEAD + "---\nnotes with a NUL \u0000",
        HEAD + "---\n" + "n".repeat(70_000),
        "x".repeat(300 * 1024),
        "---\n".repeat(60_000),
        "\u0000");
  }

  @ParameterizedTest
  @MethodSource("hostile")
  void isRefused(String document) {
    refused(document.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void badUtf8IsRefusedWithItsLine() {
    byte[] head = HEAD.getBytes(StandardCharsets.UTF_8);
    for (int[] bad :
        new int[][] {{0xC0, 0x80}, {0xED, 0xA0, 0x80}, {0xFF}, {0xC3}, {0xF5, 0x80, 0x80, 0x80}}) {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      bytes.writeBytes(head);
      for (int b : bad) {
        bytes.write(b);
      }
      Refusal refusal = refused(bytes.toByteArray());
      assertThat(refusal.faults()).extracting(Fault::code).containsExactly("not-utf-8");
      assertThat(refusal.faults().get(0).line()).isEqualTo(4);
    }
  }

  @Test
  void aDocumentWithManyFaultsIsAnsweredShortly() {
    Refusal refusal =
        refused(
            (HEAD + "settings:\n" + "  - {}\n".repeat(190) + "---\n")
                .getBytes(StandardCharsets.UTF_8));
    assertThat(refusal.faults()).hasSize(101);
    assertThat(refusal.faults().get(100).message()).isEqualTo("470 more faults are not listed");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "nul",
        "NaN",
        "{\"title\": Infinity}",
        "{'title': 'x'}",
        "{title: 1}",
        "{\"title\": \"x\",}",
        "{\"title\": \"\\ud800\"}",
        "{\"title\": \"a\\u0000b\"}",
        "{\"title\": 1e999999999999}",
        "{\"title\": \"x\", \"output\": {\"coupling\": 1e99999999999999}}",
        "{\"title\": \"x\", \"output\": {\"coupling\": -1e-99999999999999, \"x\": 1}}",
        "// comment\n{}",
        "\"text\"",
        "7"
      })
  void badJsonIsRefused(String json) {
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class,
            () ->
                Documents.RECIPE.fromJson(
                    json.getBytes(StandardCharsets.UTF_8), new KnownIdentity()));
    assertThat(refusal).isNotNull();
    assertSaysNothingOfTheInside(refusal);
  }

  @ParameterizedTest
  @ValueSource(strings = {"[", "{\"a\":", "[{\"a\":"})
  void deepJsonIsRefused(String piece) {
    byte[] json = piece.repeat(20_000).getBytes(StandardCharsets.UTF_8);
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class, () -> Documents.RECIPE.fromJson(json, new KnownIdentity()));
    assertThat(refusal.kind()).isEqualTo(Refusal.Kind.MALFORMED);
    assertSaysNothingOfTheInside(refusal);
  }

  @Test
  void tooMuchJsonIsRefused() {
    List<String> samples = new ArrayList<>(List.of("[0,0]"));
    for (int i = 1; i < 4096; i++) {
      samples.add("[" + i + ".1234567890123e-3,1.1234567890123457]");
    }
    String envelope = "{\"kind\":\"recorded\",\"samples\":" + samples + "}";
    String json =
        "{\"title\":\"x\",\"envelope\":" + envelope + ",\"notes\":\"" + "n".repeat(65_000) + "\"}";
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class,
            () ->
                Documents.RECIPE.fromJson(
                    json.getBytes(StandardCharsets.UTF_8), new KnownIdentity()));
    assertThat(refusal.kind()).isEqualTo(Refusal.Kind.TOO_LARGE);
  }

  /** Good documents with bytes changed, put in, taken out. */
  @Test
  void brokenDocumentsAreReadOrRefused() {
    Random random = new Random(99);
    int read = 0;
    for (int i = 0; i < 4000; i++) {
      RandomDocuments documents = new RandomDocuments(i % 200);
      boolean gate = random.nextBoolean();
      boolean json = random.nextBoolean();
      String text =
          gate
              ? (json ? Documents.json(documents.gate()) : Documents.write(documents.gate()))
              : (json ? Documents.json(documents.recipe()) : Documents.write(documents.recipe()));
      byte[] bytes = broken(text.getBytes(StandardCharsets.UTF_8), random);
      try {
        if (!json) {
          Documents.read(bytes, new KnownIdentity());
        } else if (gate) {
          Documents.GATE.fromJson(bytes, new KnownIdentity());
        } else {
          Documents.RECIPE.fromJson(bytes, new KnownIdentity());
        }
        read++;
      } catch (Refusal refusal) {
        assertSaysNothingOfTheInside(refusal);
      }
    }
    assertThat(read).isBetween(1, 3999);
  }

  private static byte[] broken(byte[] bytes, Random random) {
    byte[] broken = bytes;
    String pieces = "0123456789.-:,[]{}\"' \n#eE%xVmskHz/";
    for (int n = 1 + random.nextInt(3); n > 0; n--) {
      int at = random.nextInt(broken.length);
      byte[] piece = {(byte) pieces.charAt(random.nextInt(pieces.length()))};
      int skip = random.nextInt(3) == 0 ? 0 : 1 + random.nextInt(random.nextInt(8) == 0 ? 30 : 1);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      out.writeBytes(Arrays.copyOf(broken, at));
      if (random.nextInt(4) != 0) {
        out.writeBytes(piece);
      }
      if (at + skip < broken.length) {
        out.writeBytes(Arrays.copyOfRange(broken, at + skip, broken.length));
      }
      broken = out.toByteArray();
    }
    return broken;
  }

  private static Refusal refused(byte[] document) {
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> Documents.read(document, new KnownIdentity()));
    assertThat(refusal).isNotNull();
    assertSaysNothingOfTheInside(refusal);
    return refusal;
  }

  private static void assertSaysNothingOfTheInside(Refusal refusal) {
    assertThat(refusal.faults()).isNotEmpty();
    for (Fault fault : refusal.faults()) {
      assertThat(fault.message())
          .isNotBlank()
          .hasSizeLessThan(600)
          .doesNotContainPattern(
              "Exception|jackson|snakeyaml|java\\.|StreamRead|Feature|\\p{Cntrl}");
    }
  }
}
