package thudbook.plots;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import thudbook.drawings.Format;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.equipment.Gate;
import thudbook.equipment.StudioChannel;
import thudbook.gates.Channel;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.sources.Source;
import thudbook.wording.MetricWords;
import thudbook.wording.ReachWords;
import thudbook.wording.Reading;

/**
 * The same strike through every channel of the studio, so that channels can be told apart: white
 * noise, 7 V peak, 1 ms attack, 180 ms decay to 1 %, control drive at unity.
 *
 * @param figure the levels over each other, those of the gate in hand emphasised; safe HTML
 * @param table the numbers of each channel
 */
public record StandardStrike(String figure, DataTable table) {
  /** What it is, in words. */
  public static final String WORDS =
      "White noise struck with 7\u00a0V, 1\u00a0ms attack and 180\u00a0ms decay, control drive at"
          + " unity.";

  private static final Envelope STRIKE =
      new Envelope.AttackHoldDecay(7, Rise.linear(0.001), 0, Fall.exponential(0.18));
  private static final Source NOISE = new Source.Noise(Source.Colour.WHITE, 20, 20_000, 5);

  private static final List<Metric> TOLD =
      List.of(Metric.PEAK_DB, Metric.HOLD, Metric.RELEASE_40, Metric.THUMP_PEAK);

  /** The look of channels of other gates: thin. */
  private static final int OTHER = 5;

  private static final int LOOKS = 4;
  private static final int REMEMBERED = 400;

  /**
   * The strike through the channels of a gate and of all others.
   *
   * @param gate the one in hand
   * @param others the others of the studio
   * @param format for wide pages
   */
  public static StandardStrike of(Gate gate, List<Gate> others, Format format) {
    List<LevelsPlot.Line> lines = new ArrayList<>();
    List<List<String>> rows = new ArrayList<>();
    for (Gate other : others) {
      for (StudioChannel studio : other.channels()) {
        add(lines, rows, other.title() + ", " + studio.channel().name(), "", OTHER, studio);
      }
    }
    int look = 0;
    List<List<String>> own = new ArrayList<>();
    for (StudioChannel studio : gate.channels()) {
      String name = studio.channel().name();
      add(lines, own, "This gate, " + name, name, look++ % LOOKS + 1, studio);
    }
    own.addAll(rows);
    List<String> header = new ArrayList<>(List.of("Channel"));
    TOLD.forEach(metric -> header.add(MetricWords.of(metric).name()));
    header.add("Reach");
    String title = "The same strike through every channel";
    return new StandardStrike(
        new LevelsPlot(title, lines).figure(format), new DataTable(title, header, own));
  }

  private static void add(
      List<LevelsPlot.Line> lines,
      List<List<String>> rows,
      String name,
      String label,
      int look,
      StudioChannel studio) {
    LevelsPlot.Line line = Cache.line(studio.channel());
    lines.add(new LevelsPlot.Line(label, name, look, line.prediction()));
    Metrics metrics = line.prediction().metrics();
    List<String> row = new ArrayList<>(List.of(name));
    TOLD.forEach(metric -> row.add(Reading.of(metric, metrics.get(metric))));
    row.add(ReachWords.brief(metrics.reach()));
    rows.add(row);
  }

  /** Strikes that were predicted lately: while one channel is typed the others stay. */
  private static final class Cache {
    private static final Map<Channel, LevelsPlot.Line> LINES =
        new LinkedHashMap<>(16, 0.75f, true) {
          @Override
          protected boolean removeEldestEntry(Map.Entry<Channel, LevelsPlot.Line> eldest) {
            return size() > REMEMBERED;
          }
        };

    private Cache() {}

    static LevelsPlot.Line line(Channel channel) {
      synchronized (LINES) {
        LevelsPlot.Line known = LINES.get(channel);
        if (known != null) {
          return known;
        }
      }
      Sound sound =
          new Sound(NOISE, STRIKE, null, List.of(new Stage(channel, Drive.UNITY, null)), 0);
      LevelsPlot.Line line = LevelsPlot.Line.of("", channel.name(), OTHER, sound);
      synchronized (LINES) {
        LINES.put(channel, line);
      }
      return line;
    }
  }
}
