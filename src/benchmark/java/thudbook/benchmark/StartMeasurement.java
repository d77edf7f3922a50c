package thudbook.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** From the start of the process to the first answered page, on a database with the samples. */
final class StartMeasurement implements Measurement {
  private static final int STARTS = 9;

  @Override
  public List<Figure> measure(Path folder) throws Exception {
    Path data = folder.resolve("data");
    ServerProcess.thudbook(data).close();
    double own = median(() -> ServerProcess.thudbook(data));
    double bare = median(() -> ServerProcess.bare(folder));
    return List.of(
        new Figure(
            "`java -jar` to the first answered page, existing database, class-data archive",
            String.format(
                Locale.ROOT, "%.2f s (bare server %.2f s: %.1f times)", own, bare, own / bare),
            "under 1.5 s"));
  }

  private interface Start {
    ServerProcess now() throws IOException;
  }

  private static double median(Start start) throws Exception {
    double[] seconds = new double[STARTS];
    for (int i = 0; i < STARTS; i++) {
      try (ServerProcess process = start.now()) {
        seconds[i] = process.secondsToFirstAnswer();
      }
    }
    Arrays.sort(seconds);
    return seconds[STARTS / 2];
  }
}
