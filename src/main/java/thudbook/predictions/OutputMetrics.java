package thudbook.predictions;

import java.util.List;
import java.util.Map;
import thudbook.gates.Channel;

/** Thump, headroom and clipping, over the whole train. */
final class OutputMetrics {
  /** What is left behind a coupling of an offset that never moves: rounding, and no thump. */
  private static final double ROUNDING_VOLTS = 1e-12;

  private final Sound sound;
  private final List<Channel> channels;
  private final Trace trace;
  private final double toneVolts;

  /** Where all stages are looked at: opennesses of one stage, times of several. */
  private final double[] grid;

  /** The largest offset before any coupling, in volts. */
  private final double largestOffset;

  OutputMetrics(Sound sound, Trace trace) {
    this.sound = sound;
    this.trace = trace;
    channels = sound.stages().stream().map(Stage::channel).toList();
    toneVolts = sound.source().levelVolts();
    if (channels.size() == 1) {
      grid = opennessGrid();
      largestOffset = largestOfOne();
    } else {
      OffsetTurns turns = new OffsetTurns(trace);
      grid = turns.among(Scan.refine(trace.monotoneTimes(), 4));
      largestOffset = turns.largestVolts();
    }
  }

  private double largestOfOne() {
    return Scan.largest(grid, place -> Math.abs(trace.chain().offsetVolts(opennessAt(place), 1)));
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
    thump = thump < ROUNDING_VOLTS ? 0 : thump;
    into.put(Metric.THUMP_PEAK, thump);
    if (thump > 0) {
      into.put(Metric.THUMP_TO_TONE, LevelMetrics.decibels(thump / (toneVolts * top)));
    }
    // The worst over the outputs of all stages: the tone as a share of the room that is left to it.
    double upwards = 0;
    double downwards = 0;
    double clipped = 0;
    for (int stages = 1; stages <= channels.size(); stages++) {
      double rail = channels.get(stages - 1).output().railVolts();
      Outputs outputs = new Outputs(stages);
      double up = outputs.largest((offset, tone) -> used(rail - offset, tone));
      double down = outputs.largest((offset, tone) -> used(rail + offset, tone));
      upwards = Math.max(upwards, up);
      downwards = Math.max(downwards, down);
      if (up > 1 || down > 1) {
        double share =
            outputs.largest(
                (offset, tone) -> beyond(rail - offset, tone) + beyond(rail + offset, tone));
        clipped = Math.max(clipped, share);
      }
    }
    putHeadroom(into, Metric.HEADROOM_POSITIVE, upwards);
    putHeadroom(into, Metric.HEADROOM_NEGATIVE, downwards);
    into.put(Metric.CLIPPED_SHARE, clipped);
  }

  private static void putHeadroom(Map<Metric, Double> into, Metric metric, double used) {
    if (used < Double.MAX_VALUE) {
      into.put(metric, -LevelMetrics.decibels(used));
    }
  }

  /** The tone as a share of the room; above every number where the offset leaves none. */
  private static double used(double room, double tone) {
    return room > 0 ? tone / room : Double.MAX_VALUE;
  }

  private double thumpPeak() {
    if (sound.couplingHertz() == 0) {
      return largestOffset;
    }
    Coupling coupling = new Coupling(sound.couplingHertz());
    return channels.size() == 1
        ? coupling.largestBehindOne(trace.motions().get(0), channels.get(0).output().bleedVolts())
        : coupling.largestBehindAll(trace);
  }

  /** The share of its cycle that a sine of this peak spends above x: arccos(x/A)/π. */
  private static double beyond(double x, double peak) {
    return Math.acos(Math.max(-1, Math.min(1, x / peak))) / Math.PI;
  }

  /** Offset and tone behind the first so many stages, worked out once for all measures. */
  private final class Outputs {
    private final int stages;
    private final double[] offsets;
    private final double[] tones;

    Outputs(int stages) {
      this.stages = stages;
      offsets = new double[grid.length];
      tones = new double[grid.length];
      for (int k = 0; k < grid.length; k++) {
        double[] openness = opennessAt(grid[k]);
        offsets[k] = trace.chain().offsetVolts(openness, stages);
        tones[k] = toneVolts * trace.chain().level(openness, stages);
      }
    }

    double largest(OfOutput measure) {
      double[] values = new double[grid.length];
      for (int k = 0; k < grid.length; k++) {
        values[k] = measure.of(offsets[k], tones[k]);
      }
      return Scan.largest(
          grid,
          values,
          place -> {
            double[] openness = opennessAt(place);
            return measure.of(
                trace.chain().offsetVolts(openness, stages),
                toneVolts * trace.chain().level(openness, stages));
          });
    }
  }

  /** Something that follows from the offset and the tone's peak at an output. */
  private interface OfOutput {
    double of(double offsetVolts, double tonePeakVolts);
  }
}
