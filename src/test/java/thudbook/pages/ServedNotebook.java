package thudbook.pages;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.UUID;
import thudbook.access.Author;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.recipes.Gates;
import thudbook.recipes.Recipe;
import thudbook.recipes.Recipes;
import thudbook.storage.Database;
import thudbook.web.Server;

/** The pages over a real database, behind the real server, without style sheets. */
final class ServedNotebook implements AutoCloseable {
  static final Instant NOW = Instant.parse("2026-11-02T09:30:00Z");

  private final Database database;
  private final Recipes acts;
  private final Server server;
  private final HttpClient client = HttpClient.newHttpClient();

  /** Serves the notebook of a folder. */
  ServedNotebook(Path folder) throws IOException {
    database = Database.open(folder);
    acts =
        new Recipes(
            database.changes(),
            database.recipes(),
            database.gates(),
            InstantSource.fixed(NOW),
            () -> {});
    Pages pages =
        new Pages(
            database.recipes(),
            database.gates(),
            database.list(),
            name -> "/" + name,
            acts,
            database.drafts(),
            InstantSource.fixed(NOW),
            UUID::randomUUID);
    server =
        Server.start(
            new Server.Address(InetAddress.getLoopbackAddress(), 0, null, 1 << 20),
            pages,
            () -> "test",
            pages::addTo);
  }

  /** Writes gates and recipes down. */
  void add(List<Gate> gates, List<Recipe> recipes) {
    acts.add(
        gates.stream().map(gate -> new Gates.Written(gate, Documents.write(gate))).toList(),
        recipes.stream()
            .map(recipe -> new Recipes.Written(recipe, Documents.write(recipe)))
            .toList(),
        Author.OWNER,
        "test");
  }

  /** Asks for a page. */
  HttpResponse<String> get(String address) {
    try {
      URI url = server.url().resolve(address);
      return client.send(HttpRequest.newBuilder(url).build(), HttpResponse.BodyHandlers.ofString());
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
}
