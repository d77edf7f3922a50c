package thudbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import thudbook.changes.Thing;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.YamlPrint;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Rise;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Recipe;
import thudbook.sessions.Session;

/**
 * Property: parse(print(x)) = x, print(parse(f)) = f for canonical files, and document → JSON →
 * document is byte-identical.
 */
class RoundTripTest {
  private static final int DOCUMENTS = 1000;

  @Test
  void randomRecipes() {
    for (long seed = 0; seed < DOCUMENTS; seed++) {
      Recipe recipe = new RandomDocuments(seed).recipe();
      String text = Documents.write(recipe);
      assertThat(read(text)).as("seed %d", seed).isEqualTo(recipe);
      Recipe fromJson =
          Documents.RECIPE.fromJson(bytes(Documents.json(recipe)), new KnownIdentity());
      assertThat(fromJson).as("seed %d", seed).isEqualTo(recipe);
      assertThat(Documents.write(fromJson)).as("seed %d", seed).isEqualTo(text);
    }
  }

  @Test
  void randomGates() {
    for (long seed = 0; seed < DOCUMENTS; seed++) {
      Gate gate = new RandomDocuments(seed).gate();
      String text = Documents.write(gate);
      assertThat(read(text)).as("seed %d", seed).isEqualTo(gate);
      Gate fromJson = Documents.GATE.fromJson(bytes(Documents.json(gate)), new KnownIdentity());
      assertThat(fromJson).as("seed %d", seed).isEqualTo(gate);
      assertThat(Documents.write(fromJson)).as("seed %d", seed).isEqualTo(text);
    }
  }

  @Test
  void randomSessions() {
    for (long seed = 0; seed < DOCUMENTS; seed++) {
      Session session = new RandomDocuments(seed).session();
      String text = Documents.write(session);
      assertThat(read(text)).as("seed %d", seed).isEqualTo(session);
      Session fromJson =
          Documents.SESSION.fromJson(bytes(Documents.json(session)), new KnownIdentity());
      assertThat(fromJson).as("seed %d", seed).isEqualTo(session);
      assertThat(Documents.SESSION.fromForm(Documents.form(session), new KnownIdentity()))
          .as("seed %d", seed)
          .isEqualTo(session);
    }
  }

  @Test
  void randomModules() {
    for (long seed = 0; seed < DOCUMENTS; seed++) {
      Module module = new RandomModules(seed).module();
      String text = Documents.write(module);
      assertThat(read(text)).as("seed %d", seed).isEqualTo(module);
      Identity known = new KnownIdentity();
      Module fromJson = Documents.MODULE.fromJson(bytes(Documents.json(module)), known);
      assertThat(fromJson).as("seed %d", seed).isEqualTo(module);
      assertThat(Documents.write(fromJson)).as("seed %d", seed).isEqualTo(text);
      Map<String, List<String>> form = Documents.form(module);
      Module fromForm = Documents.MODULE.fromForm(form, known);
      assertThat(fromForm).as("seed %d", seed).isEqualTo(module);
      assertThat(Documents.form(fromForm)).as("seed %d", seed).isEqualTo(form);
    }
  }

  @Test
  void recipesAreTheSameIfAndOnlyIfTheirTextIs() {
    List<Recipe> recipes =
        IntStream.range(0, 60).mapToObj(i -> new RandomDocuments(i % 50).recipe()).toList();
    List<String> texts = recipes.stream().map(Documents::write).toList();
    for (int i = 0; i < recipes.size(); i++) {
      for (int k = 0; k < recipes.size(); k++) {
        assertThat(texts.get(i).equals(texts.get(k)))
            .isEqualTo(recipes.get(i).equals(recipes.get(k)));
      }
    }
  }

  @Test
  void whatHasNoEffectIsNotWritten() {
    EnvelopeEntry linear = attack(new Rise(0.001, Curve.LINEAR, 7));
    EnvelopeEntry usual = attack(new Rise(0.001, Curve.LINEAR, 1.3));
    assertThat(YamlPrint.of((Draft.Mapping) EnvelopePart.write(linear)))
        .isEqualTo(YamlPrint.of((Draft.Mapping) EnvelopePart.write(usual)))
        .doesNotContain("overshoot")
        .contains("hold: 0 ms");
  }

  private static EnvelopeEntry attack(Rise rise) {
    return new EnvelopeEntry.AttackHoldDecay(
        7.0, rise, -0.0, new EnvelopeEntry.FallEntry(0.18, Curve.EXPONENTIAL, 0.01));
  }

  static Stream<Path> samples() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("sample-library"))) {
      return files.filter(f -> f.toString().endsWith(".md")).sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void samplesAreCanonical(Path file) throws IOException {
    String text = Files.readString(file);
    Documents.Read<?> read = Documents.read(bytes(text), new KnownIdentity());
    assertThat(read.notes()).isEmpty();
    assertThat(read.text()).isEqualTo(text);
    assertThat(throughJson(read.thing())).isEqualTo(text);
    assertThat(file.getFileName()).hasToString(read.thing().slug() + ".md");
  }

  private static String throughJson(Thing noun) {
    if (noun instanceof Recipe recipe) {
      return Documents.write(
          Documents.RECIPE.fromJson(bytes(Documents.json(recipe)), new KnownIdentity()));
    } else if (noun instanceof Session session) {
      return Documents.write(
          Documents.SESSION.fromJson(bytes(Documents.json(session)), new KnownIdentity()));
    }
    if (noun instanceof Module module) {
      return Documents.write(
          Documents.MODULE.fromJson(bytes(Documents.json(module)), new KnownIdentity()));
    }
    return Documents.write(
        Documents.GATE.fromJson(bytes(Documents.json(((Gate) noun))), new KnownIdentity()));
  }

  private static Thing read(String text) {
    Documents.Read<?> read = Documents.read(bytes(text), new KnownIdentity());
    assertThat(read.notes()).isEmpty();
    return read.thing();
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
