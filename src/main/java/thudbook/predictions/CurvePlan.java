package thudbook.predictions;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Piece;
import thudbook.gates.Law;
import thudbook.predictions.CurveLines.Line;

/**
 * Places the points of a curve. The corners of the control voltages and the extrema of the level
 * come first, between them the ends of {@link CurveLines}; what is left of the points goes to the
 * {@link VoltageBends}.
 */
final class CurvePlan {
  private static final int MOST = 200;
  private static final int MOST_PER_STRIKE = 40;

  /** A level this near the floor is at it, in dB. */
  private static final double NEAR_FLOOR_DB = 0.1;

  private static final double LOWEST_DB = 60;
  private static final double LONGEST_SECONDS = 60;

  private final Sound sound;
  private final Trace trace;
  private final List<ControlVoltage> voltages = new ArrayList<>();
  private final double lastStrike;
  private final int most;
  private final double floorDb;

  CurvePlan(Sound sound, Trace trace) {
    this.sound = sound;
    this.trace = trace;
    for (int j = 0; j < sound.stages().size(); j++) {
      ControlVoltage voltage =
          ControlVoltage.of(sound.envelopeOf(j), sound.strikes(), sound.stages().get(j).drive());
      voltages.add(voltage);
    }
    List<Double> strikes = sound.strikes() == null ? List.of(0.0) : sound.strikes().seconds();
    lastStrike = strikes.get(strikes.size() - 1);
    most = MOST + MOST_PER_STRIKE * strikes.size();
    floorDb = LevelMetrics.decibels(Math.max(trace.baseLevel(), trace.top())) - LOWEST_DB;
  }

  Curve curve() {
    double end = endSeconds();
    List<Double> fixed = fixedTimes(end);
    int jumps = 2 * (int) fixed.stream().filter(this::jumps).count();
    int budget = Math.max(most - jumps - 1, fixed.size());
    CurveLines lines = new CurveLines(trace, floorDb);
    List<Line> level = lines.along(fixed, budget, most == MOST + MOST_PER_STRIKE);
    List<Line> smooth = new VoltageBends(lines, voltages).smoothed(level, budget);
    return new Curve(points(smooth), smooth.stream().mapToDouble(Line::worstDb).max().orElse(0));
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
