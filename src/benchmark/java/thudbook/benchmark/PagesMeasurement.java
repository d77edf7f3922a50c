package thudbook.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thudbook.Exchange;

/** The pages that show predictions, over the samples, at the HTTP answer. */
final class PagesMeasurement implements Measurement {
  private static final List<String> RECIPES =
      List.of("slack-tide-kick", "shingle-hat", "gale-tom-high", "bell-buoy", "thunder-roll");
  private static final int REVISIONS = 8;
  private static final int WARM_UP = 40;
  private static final int ROUNDS = 40;

  @Override
  public List<Figure> measure(Path folder) throws Exception {
    try (ServerProcess server = ServerProcess.thudbook(folder.resolve("data"))) {
      for (String recipe : RECIPES) {
        revise(server.port(), recipe);
      }
      return List.of(
          page(server, "a recipe", each("/recipes/%s")),
          page(server, "a recall sheet", each("/recipes/%s/recall")),
          page(server, "a history of " + REVISIONS + " revisions", each("/recipes/%s/history")),
          page(
              server,
              "a comparison of five",
              List.of("/compare?of=" + String.join("&of=", RECIPES))),
          page(server, "a session", List.of("/sessions/act-two-the-storm")),
          page(server, "the list", List.of("/")));
    }
  }

  private static List<String> each(String address) {
    return RECIPES.stream().map(recipe -> String.format(Locale.ROOT, address, recipe)).toList();
  }

  /** Saves a recipe again and again, each time with another decay. */
  private static void revise(int port, String recipe) throws IOException {
    for (int revision = 1; revision < REVISIONS; revision++) {
      Exchange.Answer answer = Exchange.get(port, "/api/recipes/" + recipe);
      Matcher decay = Pattern.compile("\"decay\":([0-9.eE+-]+)").matcher(answer.text());
      String changed =
          decay.replaceFirst(found -> "\"decay\":" + Double.parseDouble(found.group(1)) * 1.05);
      int status =
          Exchange.request(port, "PUT", "/api/recipes/" + recipe)
              .header("If-Match", answer.header("ETag"))
              .body("application/json", changed.getBytes(StandardCharsets.UTF_8))
              .send()
              .status();
      if (status != 200) {
        throw new IllegalStateException(recipe + " answered " + status);
      }
    }
  }

  private static Figure page(ServerProcess server, String what, List<String> addresses)
      throws IOException {
    List<Double> milliseconds = new ArrayList<>();
    for (int round = -WARM_UP; round < ROUNDS; round++) {
      for (String address : addresses) {
        long start = System.nanoTime();
        int status = Exchange.get(server.port(), address).status();
        if (status != 200) {
          throw new IllegalStateException(address + " answered " + status);
        }
        if (round >= 0) {
          milliseconds.add((System.nanoTime() - start) / 1e6);
        }
      }
    }
    double[] sorted = milliseconds.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    return new Figure(
        "the page of " + what + ", at the HTTP answer",
        String.format(
            Locale.ROOT,
            "mean %.1f ms, 95 %% within %.1f ms",
            Arrays.stream(sorted).average().orElseThrow(),
            sorted[sorted.length * 95 / 100]),
        "–");
  }
}
