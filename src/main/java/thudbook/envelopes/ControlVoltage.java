package thudbook.envelopes;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The control voltage of one stage over time, as exact pieces: CV(t) = clamp(offset + gain·v(t),
 * −rail, +rail) with v the envelope in volts. Immutable.
 */
public final class ControlVoltage {
  private final double restVolts;
  private final List<Piece> pieces;

  private ControlVoltage(double restVolts, List<Piece> pieces) {
    this.restVolts = restVolts;
    this.pieces = pieces;
  }

  /**
   * The control voltage that an envelope makes behind a drive.
   *
   * @param strikes null: one strike at 0
   * @throws IllegalArgumentException if a recorded voltage is to be struck
   */
  public static ControlVoltage of(Envelope envelope, @Nullable Strikes strikes, Drive drive) {
    if (envelope instanceof Envelope.Recorded recorded) {
      if (strikes != null) {
        throw new IllegalArgumentException("a recorded control voltage can't be struck again");
      }
      return driven(recorded.samples().get(0).volts(), EnvelopePieces.of(recorded), 1, drive);
    }
    Envelope.Struck struck = (Envelope.Struck) envelope;
    List<Double> times = strikes == null ? List.of(0.0) : strikes.seconds();
    Strikes.Restart restart = strikes == null ? Strikes.Restart.LEVEL : strikes.restart();
    return driven(0, EnvelopePieces.of(struck, times, restart), struck.peakVolts(), drive);
  }

  private static ControlVoltage driven(
      double rest, List<Piece> pieces, double peakVolts, Drive drive) {
    List<Piece> driven = new ArrayList<>(pieces.size() + 2);
    for (Piece piece : pieces) {
      clamp(piece.through(drive.gain() * peakVolts, drive.offsetVolts()), drive, driven);
    }
    return new ControlVoltage(drive.apply(rest * peakVolts), List.copyOf(driven));
  }

  /** Cuts a piece where it meets a rail, and lays the rail where it is beyond. */
  private static void clamp(Piece piece, Drive drive, List<Piece> into) {
    double rail = drive.railVolts();
    double first = piece.first();
    double last = piece.last();
    if (Math.abs(first) <= rail && Math.abs(last) <= rail) {
      into.add(piece);
      return;
    }
    double length = piece.end() - piece.start();
    int direction = piece.direction();
    // A monotone piece meets the rail that it comes from first, then the one that it goes to.
    double enters = Math.abs(first) <= rail ? 0 : meets(piece, -direction * rail, length);
    double leaves = Math.abs(last) <= rail ? length : meets(piece, direction * rail, length);
    if (direction == 0 || first * direction >= rail || last * direction <= -rail) {
      double held = first > rail || last > rail ? rail : -rail;
      into.add(Piece.constant(piece.start(), piece.end(), held, piece.segment()));
      return;
    }
    if (enters > 0) {
      into.add(
          Piece.constant(
              piece.start(), piece.start() + enters, -direction * rail, piece.segment()));
    }
    into.add(piece.part(enters, leaves));
    if (leaves < length) {
      into.add(
          Piece.constant(piece.start() + leaves, piece.end(), direction * rail, piece.segment()));
    }
  }

  private static double meets(Piece piece, double rail, double length) {
    double seconds = piece.secondsUntil(rail);
    return seconds > 0 ? Math.min(seconds, length) : 0;
  }

  /** The control voltage before the first strike, to which the gate has settled, in volts. */
  public double restVolts() {
    return restVolts;
  }

  /** The pieces from 0 to infinity, without gaps, in the order of time. */
  public List<Piece> pieces() {
    return pieces;
  }

  /** The control voltage long after the last strike, in volts. */
  public double finalVolts() {
    return pieces.get(pieces.size() - 1).last();
  }

  /** The control voltage at a time, in volts; at a jump the value after it. */
  public double at(double seconds) {
    if (seconds < 0) {
      return restVolts;
    }
    Piece piece = pieces.get(pieceAt(seconds));
    return piece.after(seconds - piece.start());
  }

  /** The control voltage just before a time, in volts. */
  public double before(double seconds) {
    if (seconds <= 0) {
      return restVolts;
    }
    int place = pieceAt(seconds);
    if (pieces.get(place).start() == seconds) {
      place--;
    }
    Piece piece = pieces.get(place);
    return piece.after(seconds - piece.start());
  }

  private int pieceAt(double seconds) {
    return Piece.lastBegun(pieces.size(), i -> pieces.get(i).start(), seconds);
  }
}
