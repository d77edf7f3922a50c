package thudbook.predictions;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import thudbook.gates.Channel;

/** Thump, headroom and clipping, over the whole train. */
final class OutputMetrics {
  private final Sound sound;
  private final List<Channel> channels;
  private final Trace trace;
  private final double toneVolts;

  /** Where all stages are looked at: opennesses of one stage, times of several. */
  private final double[] grid;

  OutputMetrics(Sound sound, Trace trace) {
    this.sound = sound;
    this.trace = trace;
    channels = sound.stages().stream().map(Stage::channel).toList();
    toneVolts = sound.source().levelVolts();
    grid = channels.size() == 1 ? opennessGrid() : Scan.refine(trace.monotoneTimes(), 6);
  }

  /** With one stage everything follows from the openness, which takes every value in its range. */
  private double[] opennessGrid() {
    double low = trace.motions().get(0).restOpenness();
    double high = low;
    for (double time : trace.monotoneTimes()) {
      double openness = trace.opennessAt(time)[0];
      low = Math.min(low, openness);
      high = Math.max(high, openness);
    }
    return Scan.refine(new double[] {low, high}, high > low ? 16 : 1);
  }

  private double[] opennessAt(double place) {
    return channels.size() == 1 ? new double[] {place} : trace.opennessAt(place);
  }

  void putAll(Map<Metric, Double> into, double top) {
    double thump = thumpPeak();
    into.put(Metric.THUMP_PEAK, thump);
    if (hasOffset()) {
      into.put(Metric.THUMP_TO_TONE, LevelMetrics.decibels(thump / (toneVolts * top)));
    }
    OptionalDouble positive = headroom(1);
    OptionalDouble negative = headroom(-1);
    if (positive.isPresent()) {
      into.put(Metric.HEADROOM_POSITIVE, positive.getAsDouble());
    }
    if (negative.isPresent()) {
      into.put(Metric.HEADROOM_NEGATIVE, negative.getAsDouble());
    }
    boolean neverClips =
        positive.isPresent()
            && negative.isPresent()
            && positive.getAsDouble() >= 0
            && negative.getAsDouble() >= 0;
    into.put(Metric.CLIPPED_SHARE, neverClips ? 0 : clippedShare());
  }

  private boolean hasOffset() {
    return largest(channels.size(), (offset, tone) -> Math.abs(offset)) > 0;
  }

  private double thumpPeak() {
    if (sound.couplingHertz() == 0) {
      return largest(channels.size(), (offset, tone) -> Math.abs(offset));
    }
    Coupling coupling = new Coupling(sound.couplingHertz());
    return channels.size() == 1
        ? coupling.largestBehindOne(trace.motions().get(0), channels.get(0).bleedVolts())
        : coupling.largestBehindAll(trace);
  }

  /** The least headroom towards the rail of this sign over all stages; absent where d is beyond. */
  private OptionalDouble headroom(int sign) {
    double worst = Double.POSITIVE_INFINITY;
    for (int stages = 1; stages <= channels.size(); stages++) {
      double rail = channels.get(stages - 1).outputRailVolts();
      // The tone as a share of the room that is left; above every number where none is left.
      double used =
          largest(
              stages,
              (offset, tone) -> {
                double room = rail - sign * offset;
                return room > 0 ? tone / room : Double.MAX_VALUE;
              });
      if (used == Double.MAX_VALUE) {
        return OptionalDouble.empty();
      }
      worst = Math.min(worst, -LevelMetrics.decibels(used));
    }
    return OptionalDouble.of(worst);
  }

  private double clippedShare() {
    double worst = 0;
    for (int stages = 1; stages <= channels.size(); stages++) {
      double rail = channels.get(stages - 1).outputRailVolts();
      worst =
          Math.max(
              worst,
              largest(
                  stages,
                  (offset, tone) -> beyond(rail - offset, tone) + beyond(rail + offset, tone)));
    }
    return worst;
  }

  /** The share of its cycle that a sine of this peak spends above x: arccos(x/A)/π. */
  private static double beyond(double x, double peak) {
    return Math.acos(Math.max(-1, Math.min(1, x / peak))) / Math.PI;
  }

  private double largest(int stages, OfOutput measure) {
    DoubleUnaryOperator at =
        place -> {
          double[] openness = opennessAt(place);
          double tone = toneVolts * trace.chain().level(openness, stages);
          return measure.of(trace.chain().offsetVolts(openness, stages), tone);
        };
    return Scan.largest(grid, at);
  }

  /** Something that follows from the offset and the tone's peak at an output. */
  private interface OfOutput {
    double of(double offsetVolts, double tonePeakVolts);
  }
}
