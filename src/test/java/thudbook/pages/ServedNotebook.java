package thudbook.pages;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.UUID;
import java.util.stream.Stream;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Recipes;
import thudbook.storage.Database;
import thudbook.web.Assets;
import thudbook.web.Server;

/** The pages over a real database, behind the real server. */
final class ServedNotebook implements AutoCloseable {
  private static final Path ASSETS = Path.of("web/assets");
  private static final Path SAMPLES = Path.of("sample-library");
  private static final Identity NONE_MISSING =
      new Identity() {
        @Override
        public UUID newId() {
          throw new AssertionError("a sample has no id");
        }

        @Override
        public String slugFor(String title) {
          throw new AssertionError("a sample has no slug: " + title);
        }
      };

  final Database database;
  private final Server server;
  private final HttpClient client = HttpClient.newHttpClient();

  /** Serves the notebook of a folder. */
  ServedNotebook(Path folder) throws IOException {
    database = Database.open(folder);
    Assets assets = new Assets(ownFiles(), ServedNotebook::ofLibrary);
    Pages pages = new Pages(database.recipes(), database.gates(), database.list(), assets::address);
    server =
        Server.start(
            new Server.Address(InetAddress.getLoopbackAddress(), 0, null, 1 << 20),
            pages,
            () -> "test",
            config -> {
              assets.addTo(config);
              pages.addTo(config);
            });
  }

  /** Fills it with the sample library. */
  ServedNotebook withSamples() throws IOException {
    List<RecipeStore.NewGate> gates = new ArrayList<>();
    List<Recipes.Written> recipes = new ArrayList<>();
    try (Stream<Path> files = Files.walk(SAMPLES)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".md")).sorted().toList()) {
        Documents.Noun noun = Documents.read(Files.readAllBytes(file), NONE_MISSING).noun();
        if (noun instanceof Documents.AGate gate) {
          gates.add(new RecipeStore.NewGate(gate.gate(), Documents.write(gate.gate())));
        } else if (noun instanceof Documents.ARecipe recipe) {
          recipes.add(new Recipes.Written(recipe.recipe(), Documents.write(recipe.recipe())));
        }
      }
    }
    InstantSource clock = InstantSource.fixed(Instant.parse("2026-11-02T09:30:00Z"));
    new Recipes(database.recipes(), database.gates(), clock).loadSamples(gates, recipes);
    return this;
  }

  URI url() {
    return server.url();
  }

  HttpResponse<String> get(String address) {
    try {
      return client.send(
          HttpRequest.newBuilder(url().resolve(address)).build(),
          HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    server.close();
    database.close();
  }

  private static Map<String, byte[]> ownFiles() throws IOException {
    Map<String, byte[]> files = new HashMap<>();
    try (Stream<Path> found = Files.walk(ASSETS)) {
      for (Path file : found.filter(Files::isRegularFile).toList()) {
        files.put(ASSETS.relativize(file).toString(), Files.readAllBytes(file));
      }
    }
    return files;
  }

  private static Optional<byte[]> ofLibrary(String path) {
    ClassLoader loader = ServedNotebook.class.getClassLoader();
    try (InputStream own =
        loader.getResourceAsStream("META-INF/maven/org.mvnpm.at.fontsource/inter/pom.properties")) {
      Properties properties = new Properties();
      properties.load(own);
      String folder =
          "META-INF/resources/_static/inter/" + properties.getProperty("version") + "/files/";
      try (InputStream in =
          loader.getResourceAsStream(folder + path.substring("inter/".length()))) {
        return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
