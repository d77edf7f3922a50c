package thudbook.gates;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Piece;

/**
 * How a channel's cells follow a control voltage, as exact pieces. A cell opens while its target is
 * above it and falls otherwise; where it meets its target is found in closed form. Immutable.
 *
 * <p>Between two corners the distance d = u − y obeys dd/ds = u′ − d/T. Since u is monotone there,
 * a cell meets it at most once, and only a target that comes towards it:
 *
 * <p>on a line of slope B: s = T·ln(1 − d₀/(B·T))
 *
 * <p>on an exponential: s = −ln(1 − d₀·τ·δ/C)/δ with δ = 1/τ − 1/T, or d₀·τ/C where δ = 0; never,
 * if the logarithm's argument is not above 0.
 */
public final class Motion {
  private final double restOpenness;
  private final Target.Zone restZone;
  private final boolean touchesCeiling;
  private final double finalOpenness;
  private final List<MotionPiece> pieces;

  private Motion(
      double restOpenness,
      Target.Zone restZone,
      boolean touchesCeiling,
      double finalOpenness,
      List<MotionPiece> pieces) {
    this.restOpenness = restOpenness;
    this.restZone = restZone;
    this.touchesCeiling = touchesCeiling;
    this.finalOpenness = finalOpenness;
    this.pieces = pieces;
  }

  /** The motion from rest, settled to the control voltage before the first strike. */
  public static Motion of(ControlVoltage controlVoltage, Channel channel) {
    Transfer transfer = channel.transfer();
    double rest = Targets.held(transfer, controlVoltage.restVolts());
    Targets targets = Targets.of(controlVoltage, transfer);
    Run run = new Run(channel, rest);
    for (Target target : targets.list()) {
      run.follow(target);
    }
    return new Motion(
        rest,
        Targets.zone(transfer, controlVoltage.restVolts()),
        targets.touchesCeiling(),
        Targets.held(transfer, controlVoltage.finalVolts()),
        run.pieces);
  }

  /** The openness before the first strike, 0 to 1. */
  public double restOpenness() {
    return restOpenness;
  }

  /** Where the control voltage is before the first strike. */
  public Target.Zone restZone() {
    return restZone;
  }

  /**
   * Whether the control voltage reaches the ceiling after the first strike, if only at an instant.
   */
  public boolean touchesCeiling() {
    return touchesCeiling;
  }

  /** The openness that is left in the end, 0 to 1. */
  public double finalOpenness() {
    return finalOpenness;
  }

  /** The pieces from 0 to infinity, in the order of time. */
  public List<MotionPiece> pieces() {
    return pieces;
  }

  /** The number of the piece that holds at a time of at least 0 s. */
  public int pieceAt(double seconds) {
    return Piece.lastBegun(pieces.size(), i -> pieces.get(i).start(), seconds);
  }

  /** The openness at a time, 0 to 1. */
  public double openness(double seconds) {
    if (seconds < 0) {
      return restOpenness;
    }
    MotionPiece piece = pieces.get(pieceAt(seconds));
    return piece.openness(seconds - piece.start());
  }

  /** The state of one cell at a time, 0 to 1. */
  public double cell(int index, double seconds) {
    if (seconds < 0) {
      return restOpenness;
    }
    MotionPiece piece = pieces.get(pieceAt(seconds));
    return piece.cell(index, seconds - piece.start());
  }

  /** The cells on their way through the targets. */
  private static final class Run {
    private final List<MotionPiece> pieces = new ArrayList<>();
    private final double[] shares;
    private final double[] opening;
    private final double[] release;
    private final double[] state;

    Run(Channel channel, double rest) {
      int cells = channel.release().size();
      shares = new double[cells];
      opening = new double[cells];
      release = new double[cells];
      state = new double[cells];
      double sum = channel.release().stream().mapToDouble(Cell::share).sum();
      for (int i = 0; i < cells; i++) {
        Cell cell = channel.release().get(i);
        shares[i] = cell.share() / sum;
        opening[i] = openingSeconds(cell.openingSeconds(), channel);
        release[i] = cell.releaseSeconds();
        state[i] = rest;
      }
    }

    private static double openingSeconds(@Nullable Double own, Channel channel) {
      return own == null ? channel.openingSeconds() : own;
    }

    void follow(Target target) {
      Target rest = target;
      while (true) {
        double[] times = timeConstants(rest.piece());
        double length = rest.piece().end() - rest.piece().start();
        double first = length;
        double[] meetings = new double[state.length];
        for (int i = 0; i < state.length; i++) {
          meetings[i] = meets(rest.piece(), state[i], times[i]);
          first = Math.min(first, meetings[i]);
        }
        boolean whole = first >= length;
        Target part = whole ? rest : part(rest, 0, first);
        MotionPiece piece = new MotionPiece(part, shares, state.clone(), times);
        pieces.add(piece);
        for (int i = 0; i < state.length; i++) {
          state[i] = first == Double.POSITIVE_INFINITY ? finalState(part) : piece.cell(i, first);
        }
        if (whole) {
          return;
        }
        rest = part(rest, first, length);
        for (int i = 0; i < state.length; i++) {
          if (meetings[i] <= first) {
            state[i] = rest.piece().first();
          }
        }
      }
    }

    private static double finalState(Target target) {
      return target.piece().constant();
    }

    private double[] timeConstants(Piece target) {
      double[] times = new double[state.length];
      for (int i = 0; i < times.length; i++) {
        boolean opens =
            state[i] < target.first() || (state[i] == target.first() && target.direction() > 0);
        times[i] = opens ? opening[i] : release[i];
      }
      return times;
    }

    private static Target part(Target target, double from, double to) {
      return new Target(target.piece().part(from, to), target.zone());
    }

    /** When a cell meets its target, in seconds after the start; infinite if it does not. */
    private static double meets(Piece u, double state, double timeConstant) {
      double distance = u.first() - state;
      if (distance == 0 || distance * u.direction() >= 0) {
        return Double.POSITIVE_INFINITY;
      }
      double seconds;
      if (u.slope() != 0) {
        seconds = timeConstant * Math.log1p(-distance / (u.slope() * timeConstant));
      } else {
        double reach = distance * u.timeConstant() / u.amplitude();
        double rate = 1 / u.timeConstant() - 1 / timeConstant;
        double gone = reach * rate;
        if (gone >= 1) {
          return Double.POSITIVE_INFINITY;
        }
        seconds = gone == 0 ? reach : -Math.log1p(-gone) / rate;
      }
      return seconds > 0 ? seconds : 0;
    }
  }
}
