package thudbook.plots;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Strikes;
import thudbook.gates.Cell;
import thudbook.gates.Cells;
import thudbook.gates.Channel;
import thudbook.gates.Filter;
import thudbook.gates.Level;
import thudbook.gates.Output;
import thudbook.gates.Response;
import thudbook.gates.Transfer;
import thudbook.predictions.Curve;
import thudbook.predictions.CurvePoint;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Prediction;
import thudbook.predictions.Reach;
import thudbook.predictions.SmallShape;
import thudbook.predictions.Sound;
import thudbook.predictions.Stage;
import thudbook.sources.Source;

/**
 * Sounds with predictions that are put together from chosen numbers, not predicted: what is drawn
 * must hold for any numbers, also for such as the model makes rarely.
 */
final class ConstructedShapes {
  private ConstructedShapes() {}

  /** A sound and what is said of it. */
  record Shape(Sound sound, Prediction prediction) {}

  /** The quick channel of the model's worked examples. */
  static Channel quick() {
    return channel("quick", Transfer.between(2.4, 5), 1.1);
  }

  static Channel channel(String name, Transfer transfer, double bleedVolts) {
    return new Channel(
        name,
        transfer,
        new Cells(0.0012, List.of(new Cell(0.88, 0.018, null), new Cell(0.12, 0.120, null))),
        new Response.Both(new Level(-66, 1, 0), new Filter(2, 1, 40, 9000, 1)),
        new Output(bleedVolts, 10));
  }

  /** A shape with times from the given ones; negative: absent. */
  static Shape of(
      double dead,
      double onset,
      double attack,
      double hold,
      double[] releases,
      double floorDb,
      double peakDb,
      @Nullable Strikes strikes,
      List<Stage> stages) {
    Map<Metric, Double> values = new EnumMap<>(Metric.class);
    values.put(Metric.PEAK_DB, peakDb);
    values.put(Metric.PEAK_TIME, onset + attack * 1.2);
    put(values, Metric.DEAD_TIME, dead);
    put(values, Metric.ONSET, onset);
    put(values, Metric.ATTACK, attack);
    put(values, Metric.HOLD, hold);
    put(values, Metric.RELEASE_20, releases[0]);
    put(values, Metric.RELEASE_40, releases[1]);
    put(values, Metric.RELEASE_60, releases[2]);
    put(values, Metric.LET_GO, onset + attack + hold * 1.1);
    values.put(Metric.FLOOR_DB, floorDb);
    double held = onset + attack + hold;
    List<double[]> once = new ArrayList<>();
    once.add(new double[] {Math.max(0, dead), floorDb, 0});
    once.add(new double[] {onset, -20, 0.1});
    once.add(new double[] {onset + attack, -0.9, 0.9});
    once.add(new double[] {onset + attack * 1.2, 0, 1});
    once.add(new double[] {held, -0.9, 0.9});
    for (int i = 0; i < 3; i++) {
      if (releases[i] > 0 && floorDb < -20 * (i + 1)) {
        once.add(new double[] {held + releases[i], -20 * (i + 1), Math.pow(10, -i - 1)});
      }
    }
    double[] last = once.get(once.size() - 1);
    List<Double> starts = strikes == null ? List.of(0.0) : strikes.seconds();
    List<CurvePoint> points = new ArrayList<>();
    points.add(point(-0.0005, floorDb + peakDb, 0, 0, stages));
    for (int k = 0; k < starts.size(); k++) {
      double until = k + 1 < starts.size() ? starts.get(k + 1) : Double.POSITIVE_INFINITY;
      double start = starts.get(k);
      points.add(point(start, points.get(points.size() - 1).outputDb(), 0, 0, stages));
      points.add(point(start, points.get(points.size() - 1).outputDb(), 7, 0, stages));
      for (double[] at : once) {
        double seconds = start + at[0];
        if (seconds < until && seconds >= points.get(points.size() - 1).seconds()) {
          double volts = 7 * Math.exp(-4.6 * at[0] / (held * 3));
          points.add(point(seconds, at[1] + peakDb, volts, at[2], stages));
        }
      }
    }
    points.add(
        point(starts.get(starts.size() - 1) + last[0] * 1.05, last[1] + peakDb - 2, 0, 0, stages));
    List<Double> small =
        IntStream.range(0, SmallShape.POINTS)
            .mapToObj(k -> Math.max(-60.0, -0.03 * Math.pow(k - 12, 2)))
            .toList();
    return new Shape(
        new Sound(
            new Source.Noise(Source.Colour.WHITE, 20, 20_000, 5),
            new Envelope.AttackHoldDecay(7, Rise.linear(0.001), 0, Fall.exponential(0.02)),
            strikes,
            stages,
            0),
        new Prediction(
            new Metrics(values, Reach.OPEN, Set.of()),
            List.of(),
            List.of(),
            new SmallShape(small),
            new Curve(points, 0.1)));
  }

  /** A shape with seeded random times, absences, floors, stages and strikes. */
  static Shape random(Random random) {
    double dead = random.nextInt(3) == 0 ? -1 : time(random, 1e-5, 0.02);
    double onset = Math.max(0, dead) + time(random, 1e-5, 0.2);
    double r20 = random.nextInt(6) == 0 ? -1 : time(random, 0.002, 3);
    double r40 = r20 < 0 || random.nextInt(5) == 0 ? -1 : r20 * (1 + 3 * random.nextDouble());
    double r60 = r40 < 0 || random.nextInt(4) == 0 ? -1 : r40 * (1 + 3 * random.nextDouble());
    double floor = r60 > 0 ? -62 - 60 * random.nextDouble() : r40 > 0 ? -50 : r20 > 0 ? -30 : -15;
    int count = 1 + random.nextInt(4);
    List<Stage> stages = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double threshold = 3 * random.nextDouble();
      stages.add(
          new Stage(
              channel(
                  "channel " + i,
                  Transfer.between(threshold, threshold + 0.5 + 3 * random.nextDouble()),
                  0.1),
              new Drive(1 - 0.2 * i, 0, 12),
              null));
    }
    Strikes strikes =
        random.nextInt(3) > 0
            ? null
            : new Strikes.Every(
                time(random, 0.03, 0.5), 1 + random.nextInt(64), Strikes.Restart.LEVEL);
    return of(
        dead,
        onset,
        time(random, 1e-4, 1),
        time(random, 1e-4, 2),
        new double[] {r20, r40, r60},
        floor,
        -30 * random.nextDouble(),
        strikes,
        stages);
  }

  private static double time(Random random, double least, double most) {
    return least * Math.pow(most / least, random.nextDouble());
  }

  private static void put(Map<Metric, Double> values, Metric metric, double value) {
    if (value >= 0) {
      values.put(metric, value);
    }
  }

  private static CurvePoint point(
      double seconds, double db, double volts, double openness, List<Stage> stages) {
    return new CurvePoint(
        seconds,
        db,
        openness,
        200 + 8000 * openness,
        stages.stream()
            .map(
                stage ->
                    new CurvePoint.AtStage(
                        stage.drive().apply(volts),
                        openness,
                        stage.channel().cutoffHertz(openness)))
            .toList());
  }
}
