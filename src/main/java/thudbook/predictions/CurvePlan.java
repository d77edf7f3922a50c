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
 * Places the points of a curve: the corners of the control voltages and the extrema of the level
 * first, then always a point where a straight line is worst, until the level is within its
 * tolerance and the control voltage looks smooth, or the points are used up.
 */
final class CurvePlan {
  /** What straight lines may be off, in dB; a little under the promised 0.1 dB. */
  private static final double TOLERANCE_DB = 0.09;

  /** What straight lines may be off in the control voltage, as a share of its range. */
  private static final double TOLERANCE_VOLTAGE = 0.004;

  /** A level that is off comes before any voltage that is. */
  private static final double LEVEL_FIRST = 1e6;

  private static final int MOST = 200;
  private static final int MOST_PER_STRIKE = 40;

  /** A level this near the floor is at it, in dB. */
  private static final double NEAR_FLOOR_DB = 0.1;

  private static final double LOWEST_DB = 60;
  private static final double LONGEST_SECONDS = 60;

  /**
   * Where inside a line its error is looked at: closer at the ends, where exponentials are fast.
   */
  private static final double[] LOOKS = {
    1 / 1024.0,
    1 / 256.0,
    1 / 64.0,
    1 / 16.0,
    1 / 8.0,
    1 / 4.0,
    3 / 8.0,
    1 / 2.0,
    5 / 8.0,
    3 / 4.0,
    7 / 8.0,
    15 / 16.0,
    63 / 64.0
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

  /** A line between two neighbouring points, and where it is worst. */
  private record Line(double from, double to, double worstAt, double worstDb, double badness) {}

  Curve curve() {
    double end = endSeconds();
    List<Double> fixed = fixedTimes(end);
    PriorityQueue<Line> lines =
        new PriorityQueue<>(Comparator.comparingDouble(Line::badness).reversed());
    for (int k = 0; k + 1 < fixed.size(); k++) {
      lines.add(line(fixed.get(k), fixed.get(k + 1)));
    }
    int jumps = 2 * (int) fixed.stream().filter(this::jumps).count();
    int points = fixed.size() + jumps;
    List<Line> done = new ArrayList<>();
    while (!lines.isEmpty()) {
      Line worst = lines.remove();
      if (worst.badness() <= 1 || points >= most) {
        done.add(worst);
        continue;
      }
      lines.add(line(worst.from(), worst.worstAt()));
      lines.add(line(worst.worstAt(), worst.to()));
      points++;
    }
    return new Curve(points(done), done.stream().mapToDouble(Line::worstDb).max().orElse(0));
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

  private Line line(double from, double to) {
    double fromDb = LevelMetrics.decibels(trace.level(from));
    double toDb = LevelMetrics.decibels(trace.level(to));
    double worstDb = 0;
    double badness = 0;
    double worstAt = (from + to) / 2;
    for (double share : LOOKS) {
      double time = from + (to - from) * share;
      double exactDb = LevelMetrics.decibels(trace.level(time));
      double offDb = exactDb > floorDb ? Math.abs(exactDb - (fromDb + (toDb - fromDb) * share)) : 0;
      double bad =
          offDb > TOLERANCE_DB
              ? LEVEL_FIRST + offDb / TOLERANCE_DB
              : voltageBadness(from, to, share);
      worstDb = Math.max(worstDb, offDb);
      if (bad > badness) {
        badness = bad;
        worstAt = time;
      }
    }
    if (!(to - from > 1e-12 * Math.max(1, Math.abs(to)))) {
      badness = 0;
    }
    return new Line(from, to, worstAt, worstDb, badness);
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
    return Math.min(worst, LEVEL_FIRST);
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
