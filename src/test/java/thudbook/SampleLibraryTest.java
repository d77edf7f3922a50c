package thudbook;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.predictions.Curve;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.recipes.StageEntry;

/** Property: every sample is canonical and fits the others and the rack. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SampleLibraryTest {
  /** The rack of the invented studio, as the README lists it. */
  private static final Set<String> RACK =
      Set.of(
          "N1", "O1", "O2", "E1", "E2", "P1", "R1", "T1", "S1", "A1", "G1", "G2", "G3", "G4", "V1",
          "M1");

  private final Samples samples;

  SampleLibraryTest() throws IOException {
    samples = new Samples();
  }

  static List<Path> files() throws IOException {
    return Samples.files();
  }

  @ParameterizedTest
  @MethodSource("files")
  void everySampleIsWrittenAgainByteForByte(Path file) throws IOException {
    String text = Files.readString(file);
    Documents.Read<?> read = Samples.read(text.getBytes(UTF_8));
    assertThat(read.text()).isEqualTo(text);
    assertThat(read.notes()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("files")
  void theFileIsNamedAfterTheSlug(Path file) throws IOException {
    Documents.Read<?> read = Samples.read(Files.readAllBytes(file));
    assertThat(file)
        .isEqualTo(Samples.FOLDER.resolve(read.word() + "s").resolve(read.thing().slug() + ".md"));
  }

  @Test
  void thereAreEnoughAndTheirIdsDiffer() throws IOException {
    assertThat(samples.recipes).hasSizeGreaterThanOrEqualTo(26);
    assertThat(samples.gates).hasSizeGreaterThanOrEqualTo(4);
    Set<Object> ids = new HashSet<>();
    samples.recipes.values().forEach(recipe -> ids.add(recipe.id()));
    samples.gates.values().forEach(gate -> ids.add(gate.id()));
    samples.sessions.values().forEach(session -> ids.add(session.id()));
    assertThat(samples.modules).hasSizeGreaterThanOrEqualTo(10);
    samples.modules.forEach(module -> ids.add(module.id()));
    assertThat(ids).hasSize(files().size());
  }

  @Test
  void gatesAndParentsThatAreNamedExist() {
    for (Recipe recipe : samples.recipes.values()) {
      for (StageEntry stage : recipe.stages()) {
        assertThat(samples.gates).as(recipe.slug()).containsKey(stage.gate());
      }
      if (recipe.derivedFrom() != null) {
        assertThat(samples.recipes).as(recipe.slug()).containsKey(recipe.derivedFrom());
      }
    }
  }

  @Test
  void onlyTheHalfWrittenOnesAreNotPredicted() {
    Set<String> incomplete = new TreeSet<>(samples.recipes.keySet());
    incomplete.removeAll(samples.sounds.keySet());
    assertThat(incomplete).containsExactly("gull-rattle", "keepers-glass", "parcel-from-the-boat");
  }

  /** Property: what the model's description promises of every curve. */
  @Test
  void curvesAreWithinATenthOfADecibelOfFewPoints() {
    samples.sounds.forEach(
        (slug, sound) -> {
          Curve curve = Objects.requireNonNull(samples.predictions.get(slug).curve());
          int strikes = sound.strikes() == null ? 1 : sound.strikes().seconds().size();
          assertThat(curve.worstDb()).as(slug).isLessThanOrEqualTo(0.1);
          assertThat(curve.points()).as(slug).hasSizeLessThanOrEqualTo(200 + 40 * strikes);
        });
  }

  @Test
  void completeRecipesCanBeRebuiltWithTheRack() {
    for (String slug : samples.sounds.keySet()) {
      assertThat(samples.recipes.get(slug).connections()).as(slug).isNotEmpty();
      assertThat(samples.recipes.get(slug).settings()).as(slug).isNotEmpty();
    }
    for (Recipe recipe : samples.recipes.values()) {
      for (Recipe.Connection connection : recipe.connections()) {
        assertThat(RACK).as(recipe.slug()).contains(module(connection.out()));
        assertThat(RACK).as(recipe.slug()).contains(module(connection.in()));
      }
      for (Recipe.Setting setting : recipe.settings()) {
        assertThat(RACK).as(recipe.slug()).contains(setting.module());
      }
    }
  }

  @Test
  void theExampleOfTheReadmeIsAWholeRecipe() throws IOException {
    String readme = Files.readString(Path.of("README.md"));
    String fence = "```yaml\n";
    int start = readme.indexOf(fence) + fence.length();
    String example = readme.substring(start, readme.indexOf("```", start));
    Identity identity =
        new Identity() {
          @Override
          public UUID newId() {
            return new UUID(0, 1);
          }

          @Override
          public String slugFor(String title) {
            return "example";
          }
        };
    Documents.Read<?> read = Documents.read(example.getBytes(UTF_8), identity);
    Recipe recipe = ((Recipe) read.thing());
    assertThat(Resolution.of(recipe, samples.studio).missing()).isEmpty();
  }

  @Test
  void noInputIsPatchedTwice() {
    for (Recipe recipe : samples.recipes.values()) {
      assertThat(recipe.connections())
          .as(recipe.slug())
          .extracting(Recipe.Connection::in)
          .doesNotHaveDuplicates();
    }
  }

  @Test
  void notesAreOfALengthThatIsRead() {
    for (Recipe recipe : samples.recipes.values()) {
      int words = recipe.notes().trim().split("\\s+").length;
      assertThat(words).as(recipe.slug()).isBetween(40, 150);
    }
  }

  private static String module(String jack) {
    return jack.substring(0, jack.indexOf(' '));
  }
}
