package thudbook.pages.frame;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import thudbook.access.Hands;
import thudbook.equipment.Gate;
import thudbook.notebook.Acts;
import thudbook.pages.Pages;
import thudbook.recipes.Recipe;
import thudbook.recipes.Repredictions;
import thudbook.storage.Database;
import thudbook.storage.Written;
import thudbook.web.Server;

/** The pages over a real database, behind the real server, without style sheets. */
public final class ServedNotebook implements AutoCloseable {
  static final Instant NOW = Instant.parse("2026-11-02T09:30:00Z");

  private final Database database;
  private final Acts acts;
  private final Repredictions repredictions;
  private final Server server;
  private final HttpClient client = HttpClient.newHttpClient();

  /** Serves the notebook of a folder. */
  public ServedNotebook(Path folder) throws IOException {
    database = Database.open(folder);
    InstantSource clock = InstantSource.fixed(NOW);
    Repredictions remaking = new Repredictions(database.predictions(), database.gates());
    remaking.start();
    repredictions = remaking;
    acts = Acts.on(database, clock, remaking::wake);
    Pages pages = new Pages(database, acts, name -> "/" + name, clock, UUID::randomUUID, null);
    server =
        Server.start(
            new Server.Address(InetAddress.getLoopbackAddress(), 0, null, 4 << 20),
            pages,
            () -> "test",
            pages::addTo);
  }

  /** Writes gates and recipes down. */
  public void add(List<Gate> gates, List<Recipe> recipes) {
    acts.changes().write(Written.writes(gates, recipes), Hands.OWNER, "test");
  }

  /** Asks for a page. */
  public HttpResponse<String> get(String address) {
    try {
      URI url = server.url().resolve(address);
      return client.send(HttpRequest.newBuilder(url).build(), HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Sends a form as a browser does, from a page of the notebook; redirects are not followed. */
  public HttpResponse<String> post(String address, Map<String, String> form) {
    Map<String, List<String>> fields = new LinkedHashMap<>();
    form.forEach((name, value) -> fields.put(name, List.of(value)));
    return send(address, fields);
  }

  /** The same with fields that may have more values than one. */
  public HttpResponse<String> send(String address, Map<String, List<String>> form) {
    String body =
        form.entrySet().stream()
            .flatMap(field -> field.getValue().stream().map(v -> pair(field.getKey(), v)))
            .collect(Collectors.joining("&"));
    String own = server.url().toString();
    HttpRequest request =
        HttpRequest.newBuilder(server.url().resolve(address))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .header("Origin", own.substring(0, own.length() - 1))
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build();
    try {
      return client.send(request, HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** What it is kept in. */
  Database database() {
    return database;
  }

  private static String pair(String name, String value) {
    return URLEncoder.encode(name, StandardCharsets.UTF_8)
        + "="
        + URLEncoder.encode(value, StandardCharsets.UTF_8);
  }

  /** A recipe as it is kept. */
  public Recipe recipe(String slug) {
    return database.recipes().find(slug).orElseThrow().thing();
  }

  /** The last act on a recipe, in words. */
  public String lastAct(String slug) {
    return database.recipes().revisions(recipe(slug).id(), 0, 1).get(0).what();
  }

  @Override
  public void close() {
    server.close();
    repredictions.close();
    database.close();
  }
}
