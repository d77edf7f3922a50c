package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.Proxy;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.access.Author;
import thudbook.changes.Kept;
import thudbook.documents.Documents;
import thudbook.documents.SameIdentity;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.settings.Settings;
import thudbook.storage.Database;
import thudbook.web.Server;

/**
 * Each distinct sound of an answer is predicted once, counted behind the real server. Turning knobs
 * to see what depends on them makes other sounds, which are not counted here. Property tests.
 */
class OnePredictionTest {
  private static final Map<Sound, Integer> PREDICTED = new ConcurrentHashMap<>();
  private static final HttpClient CLIENT = HttpClient.newHttpClient();

  @TempDir private static Path folder;

  private static Database database;
  private static Server server;

  @BeforeAll
  static void serve() throws IOException {
    database = Database.open(folder);
    InstantSource clock = InstantSource.fixed(Instant.parse("2026-11-02T09:30:00Z"));
    Acts acts = Acts.on(database, clock, () -> {});
    acts.changes().write(SampleLibrary.writes(), Author.SAMPLES, "loaded the sample library");
    for (String slug : List.of("slack-tide-kick", "ratchet")) {
      for (String notes : List.of("Louder.", "Softer.", "As it was.")) {
        Kept<Recipe> stored = database.recipes().find(slug).orElseThrow();
        String text = stored.document() + "\n" + notes + "\n";
        Recipe recipe =
            (Recipe)
                Documents.read(
                        text.getBytes(StandardCharsets.UTF_8), new SameIdentity(stored.id(), slug))
                    .thing();
        acts.recipes().change(recipe.id(), stored.version(), recipe, new Author("tester"), notes);
      }
    }
    Stores counted =
        (Stores)
            Proxy.newProxyInstance(
                Stores.class.getClassLoader(),
                new Class<?>[] {Stores.class},
                (proxy, method, values) ->
                    method.getName().equals("listening")
                        ? new Listening(database.gates(), OnePredictionTest::counted)
                        : method.invoke(database, values));
    Settings settings =
        Settings.of(Map.of("port", "0", "data", folder.toString()), Map.of(), Map.of());
    server =
        Notebook.serve(settings, counted, database::schemaVersion, acts, clock, UUID::randomUUID);
  }

  @AfterAll
  static void stop() {
    server.close();
    database.close();
  }

  private static Prediction counted(Sound sound, boolean drawn) {
    PREDICTED.merge(sound, 1, Integer::sum);
    return drawn ? Predictor.predictWithCurve(sound) : Predictor.predict(sound);
  }

  /** The sounds that an answer predicts, each of them once. */
  private static int sounds(String address) {
    PREDICTED.clear();
    try {
      HttpResponse<String> answer =
          CLIENT.send(
              HttpRequest.newBuilder(URI.create(server.url() + address)).build(),
              HttpResponse.BodyHandlers.ofString());
      assertThat(answer.statusCode()).as(address).isEqualTo(200);
    } catch (IOException e) {
      throw new AssertionError(address, e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
    assertThat(PREDICTED.values()).as(address).containsOnly(1);
    return PREDICTED.size();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "/recall", "/history/1", "/text"})
  void pagesOfARecipe(String page) {
    for (Kept<Recipe> sample : database.recipes().all()) {
      String address = "recipes/" + sample.slug() + page;
      if (isPredicted(sample.thing())) {
        assertThat(sounds(address)).isPositive();
      }
    }
  }

  private static boolean isPredicted(Recipe recipe) {
    return new Listening(database.gates()).hear(recipe).sound().isPresent();
  }

  /** Four revisions that differ in their notes only have one sound. */
  @ParameterizedTest
  @ValueSource(strings = {"slack-tide-kick", "ratchet"})
  void revisionsOfOneSoundArePredictedOnce(String slug) {
    assertThat(sounds("recipes/" + slug + "/history")).isEqualTo(1);
  }

  /** Each as it is struck, and one strike of it: of a train these are two sounds. */
  @ParameterizedTest
  @ValueSource(strings = {"hull-boom@1,hull-boom", "slack-tide-kick,ratchet@1,ratchet,oil-can"})
  void comparedOnesArePredictedOnce(String names) {
    Set<Sound> distinct = new HashSet<>();
    for (String name : names.replace("@1", "").split(",", -1)) {
      Recipe recipe = database.recipes().find(name).orElseThrow().thing();
      Sound sound = new Listening(database.gates()).hear(recipe).sound().orElseThrow();
      distinct.add(sound);
      distinct.add(
          new Sound(sound.source(), sound.envelope(), null, sound.stages(), sound.couplingHertz()));
    }
    assertThat(sounds("compare?of=" + names)).isEqualTo(distinct.size());
  }

  @ParameterizedTest
  @ValueSource(strings = {"sessions/%s", "sessions/%s/sheets", "api/sessions/%s/plan"})
  void sessions(String address) {
    for (String slug : List.of("act-two-the-storm", "first-run-through")) {
      String of = String.format(address, slug);
      if (address.endsWith("sheets") || slug.startsWith("act")) {
        assertThat(sounds(of)).isPositive();
      }
    }
  }

  @Test
  void json() {
    assertThat(sounds("api/recipes/ratchet/prediction")).isEqualTo(1);
    assertThat(sounds("api/recipes/ratchet/prediction?include=curve")).isEqualTo(1);
  }
}
