package thudbook.benchmark;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import thudbook.Exchange;
import thudbook.equipment.Gate;
import thudbook.storage.Database;
import thudbook.yardstick.RandomLibrary;

/**
 * Finding in libraries of several sizes; the property {@code benchmark.recipes} names them, with
 * commas between.
 */
final class FindMeasurement implements Measurement {
  private static final int VOICES = 3_000;
  private static final int CLIENTS = 2;
  private static final int SEARCHES = 200;

  /** So often as many other searches come before: a server of a studio runs for days. */
  private static final int WARM_UP = 5;

  /** In larger libraries it would take many minutes. */
  private static final int MOST_PREDICTED_AGAIN = 200_000;

  private static final ObjectMapper JSON = new ObjectMapper();

  /** The tables in an order in which their references can be written. */
  private static final List<String> TABLES =
      List.of(
          "change",
          "thing",
          "thing_slug",
          "revision",
          "recipe_stage",
          "tag",
          "recipe_tag",
          "prediction",
          "recipe_fact");

  @Override
  public List<Figure> measure(Path folder) throws Exception {
    List<Figure> figures = new ArrayList<>();
    String sizes = System.getProperty("benchmark.recipes", "20000,100000");
    for (String size : sizes.split(",", -1)) {
      if (!size.isBlank()) {
        figures.addAll(measure(folder.resolve(size), Integer.parseInt(size.strip())));
      }
    }
    return figures;
  }

  private static List<Figure> measure(Path folder, int recipes) throws Exception {
    Path data = folder.resolve("data");
    RandomLibrary library = new RandomLibrary(1, VOICES);
    long start = System.nanoTime();
    try (Database database = Database.open(data)) {
      library.fill(database, recipes);
    }
    double filled = (System.nanoTime() - start) / 1e9;
    double raw = raw(data, folder.resolve("raw"));
    List<Figure> figures = new ArrayList<>();
    String title = String.format(Locale.ROOT, "%,d recipes: ", recipes);
    figures.add(
        new Figure(
            title + "taken in, against bare inserts of the same rows without the index of words",
            String.format(Locale.ROOT, "%.1f s to %.1f s: %.1f times", filled, raw, filled / raw),
            "–"));
    figures.add(catalogue(title, data));
    double scan = scan(data.resolve("thudbook.db"));
    int heap = recipes > 200_000 ? 1_600 : 256;
    try (ServerProcess server = ServerProcess.thudbook(data, "-Xmx" + heap + "m")) {
      figures.add(searches(title, server.port(), library, scan));
      figures.add(alike(title, server.port(), recipes));
      if (recipes <= MOST_PREDICTED_AGAIN) {
        figures.add(
            new GateEdit(server.port())
                .measure(
                    title + "all gates changed",
                    library.gates().stream().map(Gate::slug).toList(),
                    "100,000 within 10 s, list within 50 ms"));
      }
    }
    return figures;
  }

  /** Writes every row again with nothing but statements of the database. */
  private static double raw(Path data, Path other) throws SQLException {
    Database.open(other).close();
    try (Connection connection = connect(other.resolve("thudbook.db"));
        Statement statement = connection.createStatement()) {
      statement.execute("ATTACH '" + data.resolve("thudbook.db") + "' AS filled");
      long start = System.nanoTime();
      statement.execute("BEGIN IMMEDIATE");
      for (String table : TABLES) {
        statement.execute("INSERT INTO main." + table + " SELECT * FROM filled." + table);
      }
      statement.execute("COMMIT");
      return (System.nanoTime() - start) / 1e9;
    }
  }

  private static Connection connect(Path file) throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  private static Figure catalogue(String title, Path data) {
    Database.open(data).close();
    long before = used();
    long start = System.nanoTime();
    try (Database database = Database.open(data)) {
      double seconds = (System.nanoTime() - start) / 1e9;
      double mebibytes = (used() - before) / (double) (1 << 20);
      if (database.library().catalogue().size() == 0) {
        throw new IllegalStateException("nothing is there");
      }
      return new Figure(
          title + "opened, with the catalogue in memory",
          String.format(Locale.ROOT, "%.2f s, %.0f MiB", seconds, mebibytes),
          "100,000 under 1 s and 100 MB, 1,000,000 under 10 s and 600 MB");
    }
  }

  private static long used() {
    Runtime runtime = Runtime.getRuntime();
    for (int i = 0; i < 4; i++) {
      System.gc();
    }
    return runtime.totalMemory() - runtime.freeMemory();
  }

  /** The yardstick: one count that scans a column. */
  private static double scan(Path file) throws SQLException {
    try (Connection connection = connect(file);
        Statement statement = connection.createStatement()) {
      double best = Double.POSITIVE_INFINITY;
      for (int i = 0; i < 5; i++) {
        long start = System.nanoTime();
        try (ResultSet rows =
            statement.executeQuery("SELECT count(*) FROM prediction WHERE hold > 0.05")) {
          rows.next();
        }
        best = Math.min(best, (System.nanoTime() - start) / 1e6);
      }
      return best;
    }
  }

  private static Figure searches(String title, int port, RandomLibrary library, double scan)
      throws Exception {
    for (int round = 1; round <= WARM_UP; round++) {
      run(port, library, round);
    }
    List<Double> json = run(port, library, 0);
    return new Figure(
        title
            + "200 mixed searches with counts after 1,000 others, 2 clients, both answers in JSON",
        String.format(
            Locale.ROOT,
            "median %.1f ms, 95 %% within %.1f ms (one plain scan that counts: %.1f ms)",
            json.get(json.size() / 2),
            json.get(json.size() * 95 / 100),
            scan),
        "100,000 within 25 ms, 1,000,000 within 150 ms");
  }

  private static List<Double> run(int port, RandomLibrary library, int seed) throws Exception {
    ExecutorService clients = Executors.newFixedThreadPool(CLIENTS);
    List<Future<List<Double>>> done = new ArrayList<>();
    for (int client = 0; client < CLIENTS; client++) {
      done.add(clients.submit(client(port, library, 10 * seed + client)));
    }
    List<Double> milliseconds = new ArrayList<>();
    for (Future<List<Double>> each : done) {
      milliseconds.addAll(each.get());
    }
    clients.shutdown();
    Collections.sort(milliseconds);
    return milliseconds;
  }

  private static Callable<List<Double>> client(int port, RandomLibrary library, int seed) {
    return () -> {
      Random random = new Random(seed);
      List<Double> milliseconds = new ArrayList<>();
      for (int i = 0; i < SEARCHES / CLIENTS; i++) {
        String query = query(random, library);
        long start = System.nanoTime();
        expect(Exchange.get(port, "/api/recipes?limit=40&" + query));
        expect(Exchange.get(port, "/api/facets?" + query));
        milliseconds.add((System.nanoTime() - start) / 1e6);
      }
      return milliseconds;
    };
  }

  /** Words, a tag, numbers, channels and orders, alone and together. */
  private static String query(Random random, RandomLibrary library) {
    List<String> parts = new ArrayList<>();
    if (random.nextInt(2) == 0) {
      String word = library.words().get((int) Math.exp(random.nextDouble() * 7));
      parts.add("q=" + encoded(word.substring(0, Math.min(word.length(), 2 + random.nextInt(5)))));
    }
    if (random.nextInt(3) == 0) {
      parts.add("tag=" + encoded(library.tags().get(random.nextInt(20))));
    }
    if (random.nextInt(3) == 0) {
      parts.add("hold.to=" + encoded((20 + random.nextInt(200)) + " ms"));
    }
    if (random.nextInt(4) == 0) {
      parts.add("release40.from=" + encoded((50 + random.nextInt(300)) + " ms"));
    }
    if (random.nextInt(4) == 0) {
      parts.add("on=" + library.gates().get(random.nextInt(3)).slug() + "/quick");
    }
    if (random.nextInt(3) == 0) {
      parts.add("order=" + List.of("-hold", "title", "peakDb", "newest").get(random.nextInt(4)));
    }
    return String.join("&", parts);
  }

  private static Figure alike(String title, int port, int recipes) throws IOException {
    Random random = new Random(2);
    List<Double> milliseconds = new ArrayList<>();
    for (int i = -200; i < 100; i++) {
      String slug = "r" + random.nextInt(recipes);
      long start = System.nanoTime();
      JsonNode answer =
          JSON.readTree(expect(Exchange.get(port, "/api/recipes/" + slug + "/alike")).bytes());
      if (i >= 0 && !answer.get("recipes").isEmpty()) {
        milliseconds.add((System.nanoTime() - start) / 1e6);
      }
    }
    Collections.sort(milliseconds);
    return new Figure(
        title + "the 20 most alike by shape, at the answer",
        String.format(
            Locale.ROOT,
            "median %.1f ms, 95 %% within %.1f ms",
            milliseconds.get(milliseconds.size() / 2),
            milliseconds.get(milliseconds.size() * 95 / 100)),
        "100,000 under 20 ms");
  }

  private static Exchange.Answer expect(Exchange.Answer answer) throws IOException {
    if (answer.status() != 200) {
      throw new IOException("answered " + answer.status() + ": " + answer.text());
    }
    return answer;
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
