package thudbook.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import thudbook.Exchange;

/** The largest resident memory of a server of very many recipes while clients keep asking. */
final class MemoryMeasurement implements Measurement {
  private static final int RECIPES = 10_000;
  private static final int CLIENTS = 4;
  private static final int REQUESTS_PER_CLIENT = 1_500;

  private static final byte[] SOUND =
      """
      {"source": {"kind": "noise"},
       "envelope": {"kind": "attack-hold-decay", "peak": 7, "attack": 0.001, "decay": 0.3},
       "stages": [{"gate": "keeper-twin", "channel": "quick"}]}
      """
          .getBytes(StandardCharsets.UTF_8);

  @Override
  public List<Figure> measure(Path folder) throws Exception {
    Path data = folder.resolve("data");
    List<String> slugs = LargeNotebook.fill(data, RECIPES);
    try (ServerProcess server = ServerProcess.thudbook(data)) {
      long start = System.nanoTime();
      ExecutorService clients = Executors.newFixedThreadPool(CLIENTS);
      List<Future<Void>> done = new ArrayList<>();
      for (int client = 0; client < CLIENTS; client++) {
        done.add(clients.submit(client(server.port(), slugs, client)));
      }
      for (Future<Void> each : done) {
        each.get();
      }
      clients.shutdown();
      double perSecond = CLIENTS * REQUESTS_PER_CLIENT / ((System.nanoTime() - start) / 1e9);
      return List.of(
          new Figure(
              "peak resident memory, 10,000 recipes, 4 clients, heap " + ServerProcess.HEAP,
              String.format(
                  Locale.ROOT,
                  "%.0f MiB (%.0f answers a second)",
                  server.peakMebibytes(),
                  perSecond),
              "under 300 MB"));
    }
  }

  /** Asks for lists, recipes, their predictions and sounds, one after the other. */
  private static Callable<Void> client(int port, List<String> slugs, int seed) {
    return () -> {
      Random random = new Random(seed);
      for (int i = 0; i < REQUESTS_PER_CLIENT; i++) {
        String slug = slugs.get(random.nextInt(slugs.size()));
        switch (i % 5) {
          case 0 -> ask(Exchange.request(port, "GET", "/"));
          case 1 -> ask(Exchange.request(port, "GET", "/recipes/" + slug));
          case 2 -> ask(Exchange.request(port, "GET", "/api/recipes?order=title&limit=100"));
          case 3 -> ask(Exchange.request(port, "GET", "/api/recipes/" + slug + "/prediction"));
          default ->
              ask(
                  Exchange.request(port, "POST", "/api/predictions?include=curve")
                      .body("application/json", SOUND));
        }
      }
      return null;
    };
  }

  private static void ask(Exchange exchange) throws IOException {
    int status = exchange.send().status();
    // Half-written recipes have no prediction, and say so.
    if (status != 200 && status != 409) {
      throw new IOException("answered " + status);
    }
  }
}
