package thudbook.envelopes;

import java.util.ArrayList;
import java.util.List;

/**
 * Runs an envelope through its strikes and writes down its level as exact pieces from 0 to
 * infinity.
 */
final class EnvelopePieces {
  private final List<Piece> pieces = new ArrayList<>();
  private double now;
  private double level;

  /** When the next strike cuts the run short; infinite after the last one. */
  private double cut;

  private EnvelopePieces() {}

  /** The level of a struck envelope, 0 to 1. */
  static List<Piece> of(Envelope.Struck envelope, List<Double> strikes, Strikes.Restart restart) {
    EnvelopePieces run = new EnvelopePieces();
    for (int k = 0; k < strikes.size(); k++) {
      run.now = strikes.get(k);
      run.cut = k + 1 < strikes.size() ? strikes.get(k + 1) : Double.POSITIVE_INFINITY;
      if (restart == Strikes.Restart.ZERO) {
        run.level = 0;
      }
      run.strike(envelope);
    }
    return run.pieces;
  }

  /** The samples of a recorded voltage in volts. */
  static List<Piece> of(Envelope.Recorded recorded) {
    List<Envelope.Sample> samples = recorded.samples();
    List<Piece> pieces = new ArrayList<>(samples.size());
    for (int i = 0; i + 1 < samples.size(); i++) {
      Envelope.Sample from = samples.get(i);
      Envelope.Sample to = samples.get(i + 1);
      double slope = (to.volts() - from.volts()) / (to.seconds() - from.seconds());
      Segment segment = new Segment(Segment.Kind.SAMPLES, from.seconds(), to.seconds());
      pieces.add(Piece.line(from.seconds(), to.seconds(), from.volts(), slope, segment));
    }
    Envelope.Sample last = samples.get(samples.size() - 1);
    Segment segment = new Segment(Segment.Kind.SAMPLES, last.seconds(), Double.POSITIVE_INFINITY);
    pieces.add(Piece.constant(last.seconds(), Double.POSITIVE_INFINITY, last.volts(), segment));
    return pieces;
  }

  private void strike(Envelope.Struck envelope) {
    double strike = now;
    if (envelope instanceof Envelope.Pulse pulse) {
      level = 1;
      stay(Segment.Kind.HIGH, strike + pulse.lengthSeconds());
      level = now < cut ? 0 : level;
      stay(Segment.Kind.REST, Double.POSITIVE_INFINITY);
    } else if (envelope instanceof Envelope.AttackHoldDecay shape) {
      rise(shape.attack(), Double.POSITIVE_INFINITY);
      stay(Segment.Kind.HOLD, now + shape.holdSeconds());
      fall(Segment.Kind.DECAY, shape.decay(), 0, Double.POSITIVE_INFINITY);
    } else if (envelope instanceof Envelope.AttackDecaySustainRelease shape) {
      double keyUp = strike + shape.lengthSeconds();
      rise(shape.attack(), keyUp);
      fall(Segment.Kind.DECAY, shape.decay(), shape.sustain(), keyUp);
      fall(Segment.Kind.RELEASE, shape.release(), 0, Double.POSITIVE_INFINITY);
    }
  }

  private void rise(Rise attack, double keyUp) {
    if (attack.seconds() == 0 || level >= 1) {
      level = 1;
      return;
    }
    boolean linear = attack.curve() == Curve.LINEAR;
    double tau = linear ? 0 : attack.timeConstantSeconds();
    double target = attack.overshoot();
    double needed =
        linear ? (1 - level) * attack.seconds() : tau * Math.log((target - level) / (target - 1));
    double end = now + needed;
    Segment segment = new Segment(Segment.Kind.ATTACK, now, end);
    double until = Math.min(end, Math.min(keyUp, cut));
    Piece piece =
        linear
            ? Piece.line(now, until, level, 1 / attack.seconds(), segment)
            : Piece.exponential(now, until, level, target, tau, segment);
    add(piece);
    if (until == end) {
      level = 1;
    }
  }

  private void stay(Segment.Kind kind, double end) {
    if (end > now && now < cut) {
      add(Piece.constant(now, Math.min(end, cut), level, new Segment(kind, now, end)));
    }
  }

  private void fall(Segment.Kind kind, Fall fall, double target, double keyUp) {
    double limit = Math.min(keyUp, cut);
    if (now >= limit) {
      return;
    }
    double end = now + fall.seconds();
    Segment segment = new Segment(kind, now, Math.min(end, keyUp));
    if (fall.curve() == Curve.EXPONENTIAL) {
      add(Piece.exponential(now, limit, level, target, fall.timeConstantSeconds(), segment));
      return;
    }
    double slope = (target - level) / fall.seconds();
    add(Piece.line(now, Math.min(end, limit), level, slope, segment));
    if (end < limit) {
      level = target;
      stay(kind == Segment.Kind.DECAY ? Segment.Kind.SUSTAIN : Segment.Kind.REST, limit);
    }
  }

  private void add(Piece piece) {
    if (piece.end() > piece.start()) {
      pieces.add(piece);
      level = piece.last();
      now = piece.end();
    }
  }
}
