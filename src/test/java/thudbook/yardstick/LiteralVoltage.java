package thudbook.yardstick;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import thudbook.envelopes.Curve;
import thudbook.envelopes.Drive;
import thudbook.envelopes.Envelope;
import thudbook.envelopes.Fall;
import thudbook.envelopes.Rise;
import thudbook.envelopes.Strikes;

/**
 * The control voltage as its definition reads: segment after segment, E(t) by formula, then
 * clamp(offset + gain·peak·E(t)). Nothing is simplified or solved.
 */
public final class LiteralVoltage {
  /** What a segment is; only {@link #DECAY} and {@link #RELEASE} can be ignored in part. */
  public enum Kind {
    ATTACK,
    HELD,
    DECAY,
    RELEASE,
    SAMPLES
  }

  /**
   * One smooth stretch. Its function is monotone and may be asked at both ends.
   *
   * @param end infinite for the last one
   * @param nominalEnd start plus the segment's own time, or the key up that cuts a decay
   * @param unclamped volts before the rail over absolute time
   * @param asymptote what the unclamped voltage tends to, were the segment never cut
   */
  public record Segment(
      Kind kind,
      double start,
      double end,
      double nominalEnd,
      DoubleUnaryOperator unclamped,
      double asymptote) {
    boolean endless() {
      return Double.isInfinite(end);
    }
  }

  private final Drive drive;
  private final List<Segment> segments = new ArrayList<>();
  private final double restVolts;

  /** As {@link thudbook.envelopes.ControlVoltage#of}. */
  public LiteralVoltage(Envelope envelope, Strikes strikes, Drive drive) {
    this.drive = drive;
    if (envelope instanceof Envelope.Recorded recorded) {
      restVolts = clamp(drive.offsetVolts() + drive.gain() * recorded.samples().get(0).volts());
      addSamples(recorded.samples());
    } else {
      restVolts = clamp(drive.offsetVolts());
      List<Double> times = strikes == null ? List.of(0.0) : strikes.seconds();
      double level = 0;
      for (int k = 0; k < times.size(); k++) {
        boolean zero = strikes != null && strikes.restart() == Strikes.Restart.ZERO;
        double next = k + 1 < times.size() ? times.get(k + 1) : Double.POSITIVE_INFINITY;
        level = strike((Envelope.Struck) envelope, times.get(k), zero ? 0 : level, next);
      }
    }
  }

  /** The segments in the order of time, without gaps from 0 to infinity. */
  public List<Segment> segments() {
    return segments;
  }

  /** The control voltage to which everything has settled before the first strike. */
  public double restVolts() {
    return restVolts;
  }

  /** The control voltage to which everything settles in the end. */
  public double finalVolts() {
    return clamp(segments.get(segments.size() - 1).asymptote());
  }

  /** CV at a time; at a jump the value after it. */
  public double at(double seconds) {
    if (seconds < 0) {
      return restVolts;
    }
    for (int i = segments.size() - 1; i > 0; i--) {
      if (segments.get(i).start() <= seconds) {
        return at(segments.get(i), seconds);
      }
    }
    return at(segments.get(0), seconds);
  }

  /** CV as one segment has it, also at its very end. */
  public double at(Segment segment, double seconds) {
    return clamp(segment.unclamped().applyAsDouble(seconds));
  }

  /** The rails on both sides. */
  public double railVolts() {
    return drive.railVolts();
  }

  private double clamp(double volts) {
    return Math.max(-drive.railVolts(), Math.min(drive.railVolts(), volts));
  }

  private void addSamples(List<Envelope.Sample> samples) {
    for (int i = 0; i + 1 < samples.size(); i++) {
      Envelope.Sample a = samples.get(i);
      Envelope.Sample b = samples.get(i + 1);
      DoubleUnaryOperator volts =
          t -> {
            double x = (t - a.seconds()) / (b.seconds() - a.seconds());
            return drive.offsetVolts() + drive.gain() * (a.volts() * (1 - x) + b.volts() * x);
          };
      boolean held = a.volts() == b.volts() || drive.gain() == 0;
      segments.add(
          new Segment(
              held ? Kind.HELD : Kind.SAMPLES,
              a.seconds(),
              b.seconds(),
              b.seconds(),
              volts,
              volts.applyAsDouble(b.seconds())));
    }
    Envelope.Sample last = samples.get(samples.size() - 1);
    double volts = drive.offsetVolts() + drive.gain() * last.volts();
    double infinity = Double.POSITIVE_INFINITY;
    segments.add(new Segment(Kind.HELD, last.seconds(), infinity, infinity, t -> volts, volts));
  }

  /** Adds what one strike does until the next and returns the level then reached. */
  private double strike(Envelope.Struck envelope, double t0, double from, double next) {
    Line line = new Line(envelope.peakVolts(), next);
    double infinity = Double.POSITIVE_INFINITY;
    if (envelope instanceof Envelope.Pulse pulse) {
      line.held(t0, t0 + pulse.lengthSeconds(), 1);
      line.held(t0 + pulse.lengthSeconds(), infinity, 0);
    } else if (envelope instanceof Envelope.AttackHoldDecay ahd) {
      double full = line.attack(t0, ahd.attack(), from, infinity);
      double end = full + ahd.holdSeconds();
      line.held(full, end, 1);
      line.fall(Kind.DECAY, end, ahd.decay(), 1, 0, infinity);
    } else if (envelope instanceof Envelope.AttackDecaySustainRelease adsr) {
      double keyUp = t0 + adsr.lengthSeconds();
      double full = line.attack(t0, adsr.attack(), from, keyUp);
      if (full < keyUp) {
        line.fall(Kind.DECAY, full, adsr.decay(), 1, adsr.sustain(), keyUp);
      }
      line.fall(Kind.RELEASE, keyUp, adsr.release(), line.reached(keyUp), 0, infinity);
    }
    return line.reached(next);
  }

  /** The segments of one strike, cut where the next one comes. */
  private final class Line {
    private final double peakVolts;
    private final double next;
    private DoubleUnaryOperator level = t -> 0;

    Line(double peakVolts, double next) {
      this.peakVolts = peakVolts;
      this.next = next;
    }

    double reached(double t) {
      return level.applyAsDouble(t);
    }

    void held(double start, double end, double value) {
      add(Kind.HELD, start, end, end, t -> value, value);
    }

    double attack(double start, Rise rise, double from, double cut) {
      if (rise.seconds() == 0) {
        level = t -> 1;
        return start;
      }
      double x = rise.overshoot();
      double tau = rise.seconds() / Math.log(x / (x - 1));
      boolean linear = rise.curve() == Curve.LINEAR;
      double full =
          start + (linear ? (1 - from) * rise.seconds() : tau * Math.log((x - from) / (x - 1)));
      add(
          Kind.ATTACK,
          start,
          Math.min(full, cut),
          full,
          linear
              ? t -> from + (t - start) / rise.seconds()
              : t -> x - (x - from) * Math.exp(-(t - start) / tau),
          1);
      return full;
    }

    void fall(Kind kind, double start, Fall fall, double from, double to, double cut) {
      double time = fall.seconds();
      double nominal = Math.min(start + time, cut);
      if (fall.curve() == Curve.LINEAR) {
        add(kind, start, nominal, nominal, t -> from + (to - from) * (t - start) / time, to);
        held(nominal, cut, to);
      } else {
        DoubleUnaryOperator e =
            t -> to + (from - to) * Math.pow(fall.decaysTo(), (t - start) / time);
        add(kind, start, cut, nominal, e, to);
      }
    }

    private void add(
        Kind kind, double start, double end, double nominal, DoubleUnaryOperator e, double tends) {
      double until = Math.min(end, next);
      if (start >= until) {
        return;
      }
      level = e;
      double scale = drive.gain() * peakVolts;
      DoubleUnaryOperator volts = t -> drive.offsetVolts() + scale * e.applyAsDouble(t);
      double asymptote = drive.offsetVolts() + scale * tends;
      segments.add(new Segment(kind, start, until, nominal, volts, asymptote));
    }
  }
}
