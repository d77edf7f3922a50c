package thudbook.predictions;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.PriorityQueue;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Piece;
import thudbook.gates.Law;

/**
 * Places the points of a curve. The corners of the control voltages and the extrema of the level
 * come first. Between them each straight line is made as long as a tolerance of the level lets it
 * be, which needs about the fewest lines that there can be: a fine tolerance first, then the
 * promised one. If those are still too many, it is widened: errors of lines fall with the square of
 * their number. What is left of the points goes, one by one, to where the control voltage looks
 * worst.
 */
final class CurvePlan {
  /** What straight lines may be off, in dB; a little under the promised 0.1 dB. */
  private static final double TOLERANCE_DB = 0.09;

  /** What lines of a lone strike are off where there are points enough: no kink is then seen. */
  private static final double FINE_DB = 0.02;

  /** The share of the points that fine lines may take; the control voltage wants some as well. */
  private static final double FINE_SHARE = 0.75;

  /** What straight lines may be off in the control voltage, as a share of its range. */
  private static final double TOLERANCE_VOLTAGE = 0.004;

  /** A line is long enough when its error is at least this share of its tolerance. */
  private static final double LONG_ENOUGH = 0.6;

  /** So often a line is made longer or shorter before the longest good one is taken. */
  private static final int MOST_TRIES = 6;

  /** So often the tolerance is widened; errors fall so fast that a few times are enough. */
  private static final int MOST_WIDENINGS = 8;

  private static final int MOST = 200;
  private static final int MOST_PER_STRIKE = 40;

  /** A level this near the floor is at it, in dB. */
  private static final double NEAR_FLOOR_DB = 0.1;

  private static final double LOWEST_DB = 60;
  private static final double SILENCE_DB = -1000;
  private static final double LONGEST_SECONDS = 60;

  /** A line this many times as far off as it may be is not looked at any further. */
  private static final double HOPELESS = 4;

  /**
   * Where inside a line its error is looked at: closer at the ends, where exponentials are fast;
   * first where it is mostly worst.
   */
  private static final double[] LOOKS = {
    1 / 2.0,
    1 / 8.0,
    7 / 8.0,
    1 / 64.0,
    63 / 64.0,
    1 / 4.0,
    3 / 4.0,
    1 / 1024.0,
    1 / 256.0,
    1 / 16.0,
    15 / 16.0,
    3 / 8.0,
    5 / 8.0
  };

  private final Sound sound;
  private final Trace trace;
  private final List<ControlVoltage> voltages = new ArrayList<>();
  private final double lastStrike;
  private final int most;
  private final double floorDb;
  private final double voltageRange;

  CurvePlan(Sound sound, Trace trace) {
    this.sound = sound;
    this.trace = trace;
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (int j = 0; j < sound.stages().size(); j++) {
      ControlVoltage voltage =
          ControlVoltage.of(sound.envelopeOf(j), sound.strikes(), sound.stages().get(j).drive());
      voltages.add(voltage);
      for (Piece piece : voltage.pieces()) {
        lowest = Math.min(lowest, Math.min(piece.first(), piece.last()));
        highest = Math.max(highest, Math.max(piece.first(), piece.last()));
      }
    }
    voltageRange = Math.max(highest - lowest, 1e-3);
    List<Double> strikes = sound.strikes() == null ? List.of(0.0) : sound.strikes().seconds();
    lastStrike = strikes.get(strikes.size() - 1);
    most = MOST + MOST_PER_STRIKE * strikes.size();
    floorDb = LevelMetrics.decibels(Math.max(trace.baseLevel(), trace.top())) - LOWEST_DB;
  }

  /**
   * A line between two neighbouring points.
   *
   * @param toDb the level at its end
   * @param worstDb how far the level is off where it is worst
   */
  private record Line(double from, double to, double toDb, double worstDb) {}

  /**
   * A line whose control voltage may be off.
   *
   * @param worstAt where it is worst
   * @param badness how much worse than its tolerance
   */
  private record Bend(Line line, double worstAt, double badness) {}

  Curve curve() {
    double end = endSeconds();
    List<Double> fixed = fixedTimes(end);
    int jumps = 2 * (int) fixed.stream().filter(this::jumps).count();
    int budget = Math.max(most - jumps - 1, fixed.size());
    List<Line> lines = levelLines(fixed, budget);
    List<Line> smooth = smoothed(lines, budget);
    return new Curve(points(smooth), smooth.stream().mapToDouble(Line::worstDb).max().orElse(0));
  }

  /** Lines that follow the level, at most so many unless the fixed times alone are more. */
  private List<Line> levelLines(List<Double> fixed, int budget) {
    if (most == MOST + MOST_PER_STRIKE) {
      // A lone strike is drawn large; the lines of a train are too close for kinks to be seen.
      int few = (int) (FINE_SHARE * budget);
      List<Line> fine = levelLines(fixed, FINE_DB, few);
      if (fine.size() <= few) {
        return fine;
      }
    }
    double tolerance = TOLERANCE_DB;
    List<Line> lines = levelLines(fixed, tolerance, 2 * budget);
    for (int i = 0; i < MOST_WIDENINGS && lines.size() > budget; i++) {
      double share = (double) lines.size() / budget;
      tolerance *= Math.max(1.2, share * share);
      lines = levelLines(fixed, tolerance, 2 * budget);
    }
    return lines;
  }

  /** Gives up as soon as there are more lines than given. */
  private List<Line> levelLines(List<Double> fixed, double tolerance, int given) {
    List<Line> lines = new ArrayList<>();
    for (int k = 0; k + 1 < fixed.size() && lines.size() <= given; k++) {
      double to = fixed.get(k + 1);
      double from = fixed.get(k);
      double fromDb = levelDb(from);
      double length = to - from;
      while (from < to && lines.size() <= given) {
        Line line = longest(from, fromDb, length, to, tolerance);
        lines.add(line);
        length = (line.to() - from) * longer(line.worstDb(), tolerance);
        from = line.to();
        fromDb = line.toDb();
      }
    }
    return lines;
  }

  /**
   * About the longest line from a time whose error is within the tolerance.
   *
   * @param guess of its length
   * @param end where it ends at the latest
   */
  private Line longest(double from, double fromDb, double guess, double end, double tolerance) {
    double least = 1e-12 * Math.max(1, Math.abs(end));
    Line best = null;
    double tooLong = Double.POSITIVE_INFINITY;
    double length = guess;
    for (int i = 0; ; i++) {
      // What would be left for another line must be worth one.
      double to = from + length * 1.001 >= end ? end : from + length;
      boolean shortest = to - from <= least;
      Line line =
          line(from, fromDb, to, shortest ? Double.POSITIVE_INFINITY : HOPELESS * tolerance);
      boolean good = line.worstDb() <= tolerance || shortest;
      if (good) {
        best = best == null || best.to() < to ? line : best;
        if (to == end || line.worstDb() >= LONG_ENOUGH * tolerance || i >= MOST_TRIES) {
          return best;
        }
      } else {
        tooLong = Math.min(tooLong, to - from);
        if (best != null && i >= MOST_TRIES) {
          return best;
        }
      }
      double factor =
          good
              ? longer(line.worstDb(), tolerance)
              : Math.max(0.05, Math.sqrt(0.8 * tolerance / line.worstDb()));
      double next = (to - from) * factor;
      double known = best == null ? 0 : best.to() - from;
      // Outside of what is known to be good and bad there is nothing to find: halve what is
      // between.
      length =
          next <= known || next >= tooLong ? (known + Math.min(tooLong, end - from)) / 2 : next;
    }
  }

  private static double longer(double worstDb, double tolerance) {
    return worstDb <= 0 ? 4 : Math.min(4, Math.sqrt(0.9 * tolerance / worstDb));
  }

  /** Spends what is left of the points on the control voltage. */
  private List<Line> smoothed(List<Line> lines, int budget) {
    PriorityQueue<Bend> bends =
        new PriorityQueue<>(Comparator.comparingDouble(Bend::badness).reversed());
    lines.forEach(line -> bends.add(bend(line)));
    List<Line> done = new ArrayList<>();
    int count = lines.size();
    while (!bends.isEmpty()) {
      Bend worst = bends.remove();
      if (worst.badness() <= 1 || count >= budget) {
        done.add(worst.line());
        continue;
      }
      bends.add(bend(line(worst.line().from(), worst.worstAt())));
      bends.add(bend(line(worst.worstAt(), worst.line().to())));
      count++;
    }
    return done;
  }

  private List<CurvePoint> points(List<Line> lines) {
    List<Double> times = new ArrayList<>();
    lines.stream().map(Line::from).sorted().forEach(times::add);
    times.add(lines.stream().mapToDouble(Line::to).max().orElse(0));
    List<CurvePoint> points = new ArrayList<>(times.size() + 8);
    for (double time : times) {
      if (jumps(time)) {
        points.add(point(time, true));
      }
      points.add(point(time, false));
    }
    return points;
  }

  /** When the curve may end, in seconds. */
  private double endSeconds() {
    double end = 0;
    double floor = trace.finalLevel();
    OptionalDouble below = trace.lastFall(Math.pow(10, floorDb / 20));
    if (below.isPresent()) {
      end = below.getAsDouble();
    } else {
      double near = Math.pow(10, NEAR_FLOOR_DB / 20);
      end =
          Math.max(trace.lastFall(floor * near).orElse(0), trace.lastRise(floor / near).orElse(0));
    }
    if (end <= lastStrike) {
      end = Math.max(end, endOfEnvelopes());
    }
    return Math.min(1.05 * Math.max(end, 1e-5), lastStrike + LONGEST_SECONDS);
  }

  /** When the last segment of any envelope has nominally ended. */
  private double endOfEnvelopes() {
    double end = 0;
    for (ControlVoltage voltage : voltages) {
      for (Piece piece : voltage.pieces()) {
        double nominal = piece.segment().nominalEndSeconds();
        end = Math.max(end, nominal < Double.POSITIVE_INFINITY ? nominal : piece.start());
      }
    }
    return end;
  }

  /** The start, the corners and the extrema; of too many only every so many. */
  private List<Double> fixedTimes(double end) {
    List<Double> wanted = new ArrayList<>();
    for (ControlVoltage voltage : voltages) {
      voltage.pieces().stream().map(Piece::start).filter(t -> t < end).forEach(wanted::add);
    }
    for (double corner : trace.corners()) {
      if (corner < end) {
        wanted.add(corner);
      }
    }
    List<Double> inside = wanted.stream().sorted().distinct().toList();
    int step = 1 + 2 * inside.size() / most;
    List<Double> times = new ArrayList<>();
    times.add(-0.02 * end);
    for (int k = 0; k < inside.size(); k++) {
      if (k % step == 0 || jumps(inside.get(k))) {
        times.add(inside.get(k));
      }
    }
    times.add(end);
    return times;
  }

  private boolean jumps(double time) {
    for (ControlVoltage voltage : voltages) {
      if (Math.abs(voltage.before(time) - voltage.at(time)) > 1e-9) {
        return true;
      }
    }
    return false;
  }

  /** Silence is no number of decibels; a line from or to it is a very steep one. */
  private double levelDb(double seconds) {
    return Math.max(SILENCE_DB, LevelMetrics.decibels(trace.level(seconds)));
  }

  private Line line(double from, double to) {
    return line(from, levelDb(from), to, Double.POSITIVE_INFINITY);
  }

  /**
   * A line.
   *
   * @param hopeless an error above which it does not matter how large it is
   */
  private Line line(double from, double fromDb, double to, double hopeless) {
    double toDb = levelDb(to);
    double worstDb = 0;
    for (double share : LOOKS) {
      if (worstDb > hopeless) {
        break;
      }
      double exactDb = LevelMetrics.decibels(trace.level(from + (to - from) * share));
      if (exactDb > floorDb) {
        worstDb = Math.max(worstDb, Math.abs(exactDb - (fromDb + (toDb - fromDb) * share)));
      }
    }
    return new Line(from, to, toDb, worstDb);
  }

  private Bend bend(Line line) {
    double length = line.to() - line.from();
    double worstAt = (line.from() + line.to()) / 2;
    double badness = 0;
    if (length > 1e-12 * Math.max(1, Math.abs(line.to()))) {
      for (double share : LOOKS) {
        double bad = voltageBadness(line.from(), line.to(), share);
        if (bad > badness) {
          badness = bad;
          worstAt = line.from() + length * share;
        }
      }
    }
    return new Bend(line, worstAt, badness);
  }

  /** How much worse than its tolerance the control voltage is. */
  private double voltageBadness(double from, double to, double share) {
    double worst = 0;
    double time = from + (to - from) * share;
    for (ControlVoltage voltage : voltages) {
      double start = voltage.at(from);
      double straight = start + (voltage.before(to) - start) * share;
      double off = Math.abs(voltage.at(time) - straight) / voltageRange;
      worst = Math.max(worst, off / TOLERANCE_VOLTAGE);
    }
    return worst;
  }

  private CurvePoint point(double time, boolean before) {
    List<CurvePoint.AtStage> stages = new ArrayList<>(voltages.size());
    double[] openness = trace.opennessAt(time).clone();
    for (int j = 0; j < voltages.size(); j++) {
      ControlVoltage voltage = voltages.get(j);
      Law law = trace.chain().law(j);
      stages.add(
          new CurvePoint.AtStage(
              before ? voltage.before(time) : voltage.at(time),
              openness[j],
              law.cutoffHertz(openness[j])));
    }
    return new CurvePoint(
        time,
        LevelMetrics.decibels(trace.chain().level(openness)),
        trace.chain().offsetVolts(openness, sound.stages().size()),
        trace.chain().brightnessHertz(openness),
        stages);
  }
}
