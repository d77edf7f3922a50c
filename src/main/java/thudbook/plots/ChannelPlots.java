package thudbook.plots;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import thudbook.drawings.Axis;
import thudbook.drawings.Format;
import thudbook.drawings.Guide;
import thudbook.drawings.Moment;
import thudbook.drawings.Panel;
import thudbook.drawings.Plot;
import thudbook.drawings.PlotDrawing;
import thudbook.drawings.Point;
import thudbook.drawings.Scale;
import thudbook.drawings.Series;
import thudbook.gates.Channel;
import thudbook.gates.Transfer;
import thudbook.wording.ReadableNumbers;

/**
 * The plots of a gate's channel. Each is one safe SVG for any width, with its numbers as a table.
 */
public final class ChannelPlots {
  /** The level is drawn down to this. */
  private static final double LOWEST_DB = -80;

  private static final int SAMPLES = 240;

  private ChannelPlots() {}

  /** Openness over control voltage. */
  public static String transfer(Channel channel) {
    Transfer transfer = channel.transfer();
    double threshold = transfer.thresholdVolts();
    double ceiling = transfer.ceilingVolts();
    double margin = Math.max(0.2, (ceiling - threshold) / 4);
    double from = Math.min(0, threshold) - margin / 2;
    double to = ceiling + margin;
    List<Point> points = new ArrayList<>();
    points.add(new Point(from, 0));
    transfer.knots().forEach(knot -> points.add(new Point(knot.volts(), knot.openness() * 100)));
    points.add(new Point(to, 100));
    String words =
        "Openness over control voltage: closed up to the threshold of "
            + ReadableNumbers.volts(threshold)
            + ", fully open from the ceiling of "
            + ReadableNumbers.volts(ceiling)
            + ".";
    return PlotDrawing.svg(
        new Plot(
            "Transfer of " + channel.name(),
            words,
            Axis.linear("control voltage, V", from, to, 8, ReadableNumbers::significant),
            List.of(panel("openness, %", -4, 106, points, List.of())),
            List.of(),
            List.of(
                new Moment(threshold, "threshold " + ReadableNumbers.volts(threshold)),
                new Moment(ceiling, "ceiling " + ReadableNumbers.volts(ceiling))),
            List.of()),
        Format.COLUMN);
  }

  /** The knots of the transfer. */
  public static DataTable transferTable(Channel channel) {
    return new DataTable(
        "Transfer of " + channel.name(),
        List.of("Control voltage", "Openness"),
        channel.transfer().knots().stream()
            .map(
                knot ->
                    List.of(
                        ReadableNumbers.volts(knot.volts()),
                        ReadableNumbers.share(knot.openness())))
            .toList());
  }

  /** Level and cutoff over openness, as far as the response moves them. */
  public static String levelAndCutoff(Channel channel) {
    List<Panel> panels = new ArrayList<>();
    List<String> words = new ArrayList<>();
    if (channel.response().level().isPresent()) {
      panels.add(levelPanel(channel, sampled(100, y -> levelDb(channel, y / 100))));
      words.add("level from " + ReadableNumbers.decibels(levelDb(channel, 0)) + " to 0 dB");
    }
    if (channel.response().filter().isPresent()) {
      double closed = channel.cutoffHertz(0);
      double open = channel.cutoffHertz(1);
      // Far above its bend an asinh is a logarithm.
      Scale scale = new Scale(closed / 1.5, open * 1.5, closed / 1000);
      Axis axis = Axis.bent("cutoff, Hz", scale, closed / 1.5, ChannelPlots::shortHertz);
      List<Point> points = sampled(100, y -> channel.cutoffHertz(y / 100));
      panels.add(new Panel(axis, 1, List.of(new Series(points, 2, "", false)), List.of()));
      words.add(
          "cutoff from " + ReadableNumbers.hertz(closed) + " to " + ReadableNumbers.hertz(open));
    }
    return PlotDrawing.svg(
        new Plot(
            "Level and cutoff of " + channel.name(),
            "Over openness: " + String.join(", ", words) + ".",
            Axis.linear("openness, %", 0, 100, 6, ReadableNumbers::significant),
            panels,
            List.of(),
            List.of(),
            List.of()),
        Format.COLUMN);
  }

  /** Level and cutoff at some opennesses. */
  public static DataTable levelAndCutoffTable(Channel channel) {
    List<List<String>> rows = new ArrayList<>();
    for (double openness : new double[] {0, 0.001, 0.003, 0.01, 0.03, 0.1, 0.2, 0.5, 0.8, 1}) {
      rows.add(row(ReadableNumbers.share(openness), channel, openness));
    }
    return new DataTable(
        "Level and cutoff of " + channel.name(), header("Openness", channel), rows);
  }

  /**
   * How the channel falls from fully open when it is told to close at once: y = Σ wᵢ e^(−t/τᵢ), on
   * a linear time axis, on which each cell is a straight piece of the level.
   */
  public static String release(Channel channel) {
    double end = NaturalRelease.end(channel);
    boolean seconds = end >= 2;
    double unit = seconds ? 1 : 1000;
    List<Panel> panels = new ArrayList<>();
    if (channel.response().level().isPresent()) {
      List<Point> level =
          sampled(end * unit, t -> levelDb(channel, NaturalRelease.openness(channel, t / unit)));
      panels.add(levelPanel(channel, level));
    }
    List<Point> openness =
        sampled(end * unit, t -> 100 * NaturalRelease.openness(channel, t / unit));
    panels.add(panel("openness, %", -4, 106, openness, List.of()));
    return PlotDrawing.svg(
        new Plot(
            "Natural release of " + channel.name(),
            "From fully open, told to close at once. " + NaturalRelease.words(channel),
            Axis.linear(
                "time, " + (seconds ? "s" : "ms"), 0, end * unit, 7, ReadableNumbers::significant),
            panels,
            List.of(),
            List.of(),
            List.of()),
        Format.COLUMN);
  }

  /** Openness, level and cutoff at some times after closing. */
  public static DataTable releaseTable(Channel channel) {
    List<String> header = new ArrayList<>(header("Openness", channel));
    header.add(0, "Time");
    List<List<String>> rows = new ArrayList<>();
    double end = NaturalRelease.end(channel);
    for (int decade = -3; decade < 3; decade++) {
      for (int digit : new int[] {1, 2, 5}) {
        double at = digit * Math.pow(10, decade);
        if (at <= end) {
          double openness = NaturalRelease.openness(channel, at);
          List<String> row =
              new ArrayList<>(row(ReadableNumbers.share(openness), channel, openness));
          row.add(0, ReadableNumbers.seconds(at));
          rows.add(row);
        }
      }
    }
    return new DataTable("Natural release of " + channel.name(), header, rows);
  }

  /** The level at an openness, in dB. */
  static double levelDb(Channel channel, double openness) {
    return 20 * Math.log10(channel.level(openness));
  }

  private static Panel levelPanel(Channel channel, List<Point> points) {
    double floor = levelDb(channel, 0);
    double low = Math.min(-14, Math.max(LOWEST_DB, floor - 6));
    List<Guide> guides =
        floor > low
            ? List.of(new Guide(floor, "leak " + ReadableNumbers.decibels(floor), Guide.Kind.REST))
            : List.of();
    return panel("level, dB", low, 3, points, guides);
  }

  private static Panel panel(
      String title, double low, double high, List<Point> points, List<Guide> guides) {
    Axis axis = Axis.linear(title, low, high, 6, ReadableNumbers::significant);
    return new Panel(axis, 1, List.of(new Series(points, 1, "", true)), guides);
  }

  /** Samples of a function from 0 on, closer together at the start, where it bends most. */
  private static List<Point> sampled(double to, DoubleUnaryOperator function) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i <= SAMPLES; i++) {
      double share = (double) i / SAMPLES;
      double at = to * share * share * share;
      points.add(new Point(at, function.applyAsDouble(at)));
    }
    return points;
  }

  private static List<String> header(String first, Channel channel) {
    List<String> header = new ArrayList<>(List.of(first));
    if (channel.response().level().isPresent()) {
      header.add("Level");
    }
    if (channel.response().filter().isPresent()) {
      header.add("Cutoff");
    }
    return header;
  }

  private static List<String> row(String first, Channel channel, double openness) {
    List<String> row = new ArrayList<>(List.of(first));
    if (channel.response().level().isPresent()) {
      row.add(ReadableNumbers.decibels(levelDb(channel, openness)));
    }
    if (channel.response().filter().isPresent()) {
      row.add(ReadableNumbers.hertz(channel.cutoffHertz(openness)));
    }
    return row;
  }

  private static String shortHertz(double hertz) {
    return hertz < 999.5
        ? ReadableNumbers.significant(hertz)
        : ReadableNumbers.significant(hertz / 1000) + "k";
  }
}
