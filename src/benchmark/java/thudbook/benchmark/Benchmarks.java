package thudbook.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.NoBenchmarksException;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Runs every benchmark and prints the figures as one table in Markdown. With the property {@code
 * benchmark.only} it runs those whose class name contains it: {@code OneSound}, {@code Start}.
 */
public final class Benchmarks {
  private static final List<Measurement> MEASUREMENTS =
      List.of(
          new StartMeasurement(),
          new MemoryMeasurement(),
          new LiveMeasurement(),
          new PaintMeasurement(),
          new PagesMeasurement(),
          new GateEditMeasurement(),
          new FindMeasurement(),
          new KillMeasurement());

  private Benchmarks() {}

  public static void main(String[] none) throws Exception {
    String wanted = System.getProperty("benchmark.only", "");
    List<Figure> figures = new ArrayList<>(microbenchmarks(wanted));
    for (Measurement measurement : MEASUREMENTS) {
      if (measurement.getClass().getSimpleName().contains(wanted)) {
        figures.addAll(inFreshFolder(measurement));
      }
    }
    System.out.printf(
        "%nJava %s, %d processors, heap of this process %d MiB%n%n",
        Runtime.version(),
        Runtime.getRuntime().availableProcessors(),
        Runtime.getRuntime().maxMemory() >> 20);
    System.out.println("| figure | aim | measured |\n| --- | --- | --- |");
    figures.forEach(figure -> System.out.println(figure.line()));
  }

  private static List<Figure> microbenchmarks(String wanted) throws Exception {
    Map<String, Double> scores = new HashMap<>();
    OptionsBuilder options = new OptionsBuilder();
    options.include("thudbook\\.benchmark\\.\\w*" + wanted + "\\w*Benchmark\\.");
    Collection<RunResult> results;
    try {
      results = new Runner(options.shouldFailOnError(true).build()).run();
    } catch (NoBenchmarksException e) {
      return List.of();
    }
    for (RunResult result : results) {
      String name = result.getParams().getBenchmark();
      scores.put(
          name.substring("thudbook.benchmark.".length()), result.getPrimaryResult().getScore());
    }
    return figures(scores);
  }

  /** What the microbenchmarks say, as far as they were run. */
  private static List<Figure> figures(Map<String, Double> scores) {
    List<Figure> figures = new ArrayList<>();
    Double closed = scores.get("OneSoundBenchmark.closedForm");
    if (closed != null) {
      double alone = scores.getOrDefault("OneSoundBenchmark.integrationAlone", Double.NaN);
      double whole = scores.getOrDefault("OneSoundBenchmark.integrationWithMetrics", Double.NaN);
      figures.add(
          new Figure(
              "all metrics of one sound, against a general-purpose integrator at equal accuracy",
              String.format(
                  Locale.ROOT,
                  "%.0f times faster (%.1f µs to %.1f ms; bare integration %.2f ms: %.0f times)",
                  whole / closed,
                  closed,
                  whole / 1e3,
                  alone / 1e3,
                  alone / closed),
              "200 times faster"));
    }
    Double many = scores.get("ManySoundsBenchmark.perSound");
    if (many != null) {
      figures.add(
          new Figure(
              "time per sound, over 10,000 sounds",
              String.format(Locale.ROOT, "%.0f µs", many),
              "–"));
    }
    Double sweep = scores.get("SweepBenchmark.peakByDecay");
    if (sweep != null) {
      figures.add(
          new Figure(
              "sweep of peak × decay, 120 × 120, one metric",
              String.format(Locale.ROOT, "%.0f ms", sweep),
              "under 250 ms"));
    }
    return figures;
  }

  private static List<Figure> inFreshFolder(Measurement measurement) throws Exception {
    Path folder = Files.createTempDirectory("thudbook-benchmark");
    try {
      return measurement.measure(folder);
    } finally {
      delete(folder);
    }
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
