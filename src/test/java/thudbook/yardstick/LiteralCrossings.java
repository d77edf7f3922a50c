package thudbook.yardstick;

import java.util.ArrayList;
import java.util.List;
import thudbook.envelopes.Envelope;
import thudbook.predictions.Reach;
import thudbook.predictions.StageMetrics;
import thudbook.yardstick.LiteralVoltage.Kind;
import thudbook.yardstick.LiteralVoltage.Segment;

/**
 * When a literal control voltage is above a threshold or at a ceiling, segment by segment, with the
 * model's rule for voltages that are held or approached within 1e-9 V of a knot.
 */
final class LiteralCrossings {
  private static final double SAME_VOLTS = 1e-9;

  /** A stretch of time; the end may be infinite. */
  record Interval(double start, double end) {
    double length() {
      return end - start;
    }
  }

  private final LiteralVoltage voltage;

  LiteralCrossings(LiteralVoltage voltage) {
    this.voltage = voltage;
  }

  /** What one stage reports, given how far it opens. */
  StageMetrics stage(Envelope envelope, double threshold, double ceiling, double peakOpenness) {
    List<Interval> above = above(threshold, false);
    List<Interval> full = above(ceiling, true);
    boolean idle = voltage.restVolts() > threshold + SAME_VOLTS;
    boolean silent = above.isEmpty();
    Double dead = idle ? Double.valueOf(0) : silent ? null : Double.valueOf(above.get(0).start());
    double flat = full.stream().mapToDouble(Interval::length).sum();
    double end = silent ? Double.POSITIVE_INFINITY : above.get(above.size() - 1).end();
    Double letGo = Double.isInfinite(end) ? null : Double.valueOf(end);
    Reach reach =
        idle
            ? Reach.IDLE_OPEN
            : silent
                ? Reach.SILENT
                : full.isEmpty() ? Reach.PARTIAL : peakOpenness < 0.99 ? Reach.BRIEF : Reach.OPEN;
    boolean struck = !(envelope instanceof Envelope.Pulse || envelope instanceof Envelope.Recorded);
    Double ignored = struck ? Double.valueOf(silent ? 1 : ignored(letGo)) : null;
    return new StageMetrics(
        dead, Double.isInfinite(flat) ? null : flat, letGo, ignored, peakOpenness, reach);
  }

  private double ignored(Double letGo) {
    if (letGo == null) {
      return 0;
    }
    for (Segment s : voltage.segments()) {
      boolean falling = s.kind() == Kind.DECAY || s.kind() == Kind.RELEASE;
      if (falling && s.start() < letGo && letGo <= s.end()) {
        double share = (s.nominalEnd() - letGo) / (s.nominalEnd() - s.start());
        return Math.max(0, Math.min(1, share));
      }
    }
    return 0; // A fall of no duration: there is nothing of it left to ignore.
  }

  /** Where CV is above a level, or with {@code orAt} at or above it; touching stretches merge. */
  List<Interval> above(double level, boolean orAt) {
    List<Interval> all = new ArrayList<>();
    for (Segment segment : voltage.segments()) {
      Interval one = above(segment, level, orAt);
      if (one == null) {
        continue;
      }
      Interval last = all.isEmpty() ? null : all.get(all.size() - 1);
      if (last != null && last.end() >= one.start()) {
        all.set(all.size() - 1, new Interval(last.start(), one.end()));
      } else {
        all.add(one);
      }
    }
    return all;
  }

  private Interval above(Segment s, double level, boolean orAt) {
    Interval whole = new Interval(s.start(), s.end());
    double rail = voltage.railVolts();
    if (isAbove(-rail, level, orAt)) {
      return whole;
    }
    if (!isAbove(rail, level, orAt)) {
      return null;
    }
    double start = s.unclamped().applyAsDouble(s.start());
    if (start == s.asymptote()) {
      return isAbove(start, level, orAt) ? whole : null;
    }
    boolean falling = s.asymptote() < start;
    if (falling ? start <= level : s.asymptote() <= level + SAME_VOLTS) {
      return null;
    }
    if (falling ? s.asymptote() >= level - SAME_VOLTS : start > level) {
      return whole;
    }
    double until = s.endless() ? s.start() + 300 * (s.nominalEnd() - s.start()) : s.end();
    double crossing = IntegratedMotion.crossing(s, level, until);
    if (Double.isNaN(crossing)) {
      return falling ? whole : null;
    }
    return falling ? new Interval(s.start(), crossing) : new Interval(crossing, s.end());
  }

  /** Of a voltage that is held. */
  private static boolean isAbove(double volts, double level, boolean orAt) {
    return orAt ? volts >= level - SAME_VOLTS : volts > level + SAME_VOLTS;
  }
}
