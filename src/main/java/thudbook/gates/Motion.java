package thudbook.gates;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Piece;
import thudbook.quantities.Refusal;

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
  static final class Run {
    /** How far a target and a cell on it may be apart by rounding, in units of the last place. */
    private static final int ROUNDING_ULP = 8;

    private final List<MotionPiece> pieces = new ArrayList<>();
    private final double[] shares;
    private final double[] opening;
    private final double[] release;
    private final double[] state;

    Run(Channel channel, double rest) {
      List<Cell> list = channel.cells().list();
      int cells = list.size();
      shares = new double[cells];
      opening = new double[cells];
      release = new double[cells];
      state = new double[cells];
      double sum = list.stream().mapToDouble(Cell::share).sum();
      for (int i = 0; i < cells; i++) {
        Cell cell = list.get(i);
        shares[i] = cell.share() / sum;
        opening[i] = openingSeconds(cell.openingSeconds(), channel);
        release[i] = cell.releaseSeconds();
        state[i] = rest;
      }
    }

    private static double openingSeconds(@Nullable Double own, Channel channel) {
      return own == null ? channel.cells().openingSeconds() : own;
    }

    /**
     * Follows a target to its end. Each cell meets it at most once (see above), and each part but
     * the last ends where a cell meets it: one part more than there are cells, and no more. A sound
     * has at most 4,096 pieces of envelope (the samples of a recorded one), each of them passes at
     * most 2 rails and 64 knots, and 4 cells make 5 parts of each: 4,096·67·5 parts at most.
     *
     * <p>So that rounding can't break this, a cell that has met its target is held behind it, and
     * one that is off by rounding only is set onto it before its time constant is chosen: two cells
     * would else meet it in turn for ever, 1e-17 s apart.
     */
    void follow(Target target) {
      Target rest = target;
      boolean[] met = new boolean[state.length];
      for (int part = 0; part <= state.length; part++) {
        settle(rest.piece(), met);
        double[] times = timeConstants(rest.piece());
        double length = rest.piece().end() - rest.piece().start();
        double first = length;
        double[] meetings = new double[state.length];
        for (int i = 0; i < state.length; i++) {
          meetings[i] = meets(rest.piece(), state[i], times[i]);
          first = Math.min(first, meetings[i]);
        }
        if (first >= length) {
          move(rest, times, length);
          return;
        }
        move(part(rest, 0, first), times, first);
        rest = part(rest, first, length);
        for (int i = 0; i < state.length; i++) {
          met[i] |= meetings[i] <= first;
          state[i] = meetings[i] <= first ? rest.piece().first() : state[i];
        }
      }
      throw Refusal.of(
          Refusal.Kind.REFUSED_VALUES,
          "not-predictable",
          "This sound can't be predicted: its gate would meet the control voltage more often than"
              + " it can. Another attack, decay or offset, if only slightly other, helps.");
    }

    /** Sets cells onto their target that are beside it, or beyond it, by rounding only. */
    private void settle(Piece target, boolean[] met) {
      double first = target.first();
      double size = Math.max(Math.abs(target.constant()), Math.abs(target.amplitude()));
      double rounding = ROUNDING_ULP * Math.ulp(Math.max(size, Math.abs(first)));
      for (int i = 0; i < state.length; i++) {
        boolean beyond = met[i] && (first - state[i]) * target.direction() < 0;
        if (beyond || Math.abs(first - state[i]) <= rounding) {
          state[i] = first;
        }
      }
    }

    /** Adds a piece, and puts the cells where they are at its end. */
    private void move(Target target, double[] times, double seconds) {
      MotionPiece piece = new MotionPiece(target, shares, state.clone(), times);
      pieces.add(piece);
      for (int i = 0; i < state.length; i++) {
        state[i] =
            seconds == Double.POSITIVE_INFINITY
                ? target.piece().constant()
                : piece.cell(i, seconds);
      }
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
