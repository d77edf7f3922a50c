package thudbook.gates;

import java.util.ArrayList;
import java.util.List;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Piece;

/**
 * Sees a control voltage through a transfer: cuts it where it meets a knot. Voltages that are held,
 * or at which a straight line ends, count as on a knot within 1e-9 V of it; an exponential that
 * only tends to a knot never reaches it.
 */
final class Targets {
  /** How near a voltage counts as on a knot, in volts (chosen by the model's description). */
  static final double ON_KNOT_VOLTS = 1e-9;

  private final List<Transfer.Knot> knots;
  private final List<Target> targets = new ArrayList<>();
  private boolean touchesCeiling;

  private Targets(Transfer transfer) {
    this.knots = transfer.knots();
  }

  static Targets of(ControlVoltage controlVoltage, Transfer transfer) {
    Targets targets = new Targets(transfer);
    for (Piece piece : controlVoltage.pieces()) {
      targets.add(piece);
    }
    return targets;
  }

  List<Target> list() {
    return targets;
  }

  /** Whether the ceiling is reached, if only for an instant. */
  boolean touchesCeiling() {
    return touchesCeiling;
  }

  /** The openness that a held voltage asks for. */
  static double held(Transfer transfer, double volts) {
    Targets targets = new Targets(transfer);
    return targets.openness(targets.held(volts));
  }

  /** Where a held voltage is. */
  static Target.Zone zone(Transfer transfer, double volts) {
    Targets targets = new Targets(transfer);
    return targets.zoneOfHeld(targets.held(volts));
  }

  private void add(Piece piece) {
    if (piece.isConstant()) {
      double volts = held(piece.constant());
      add(piece, 0, openness(volts), zoneOfHeld(volts));
      return;
    }
    int direction = piece.direction();
    double last = piece.last();
    boolean exponential = piece.slope() == 0;
    // Number of the knot that is met next: the nearest one that lies ahead of the start.
    int knot = direction > 0 ? 0 : knots.size() - 1;
    while (inside(knot) && ahead(piece.first(), volts(knot), direction) <= ON_KNOT_VOLTS) {
      knot += direction;
    }
    Piece rest = piece;
    while (inside(knot)) {
      double volts = volts(knot);
      double beyond = ahead(volts, last, direction);
      boolean onlyTends = exponential && Math.abs(piece.constant() - volts) <= ON_KNOT_VOLTS;
      if (beyond <= (exponential ? 0 : ON_KNOT_VOLTS) || onlyTends) {
        break;
      }
      double seconds = piece.start() + piece.secondsUntil(volts) - rest.start();
      double length = rest.end() - rest.start();
      if (seconds > 0 && seconds < length) {
        add(rest.part(0, seconds), direction, knot);
        rest = rest.part(seconds, length);
      }
      knot += direction;
    }
    add(rest, direction, knot);
    touch(piece.first());
    if (!exponential) {
      touch(last);
    }
  }

  /** Adds a part on which the voltage goes towards the knot of this number, or beyond all knots. */
  private void add(Piece part, int direction, int towards) {
    int upper = direction > 0 ? towards : towards + 1;
    if (upper <= 0) {
      add(part, 0, 0, Target.Zone.SHUT);
    } else if (upper >= knots.size()) {
      add(part, 0, 1, Target.Zone.CEILING);
    } else {
      Transfer.Knot low = knots.get(upper - 1);
      Transfer.Knot high = knots.get(upper);
      double gain = (high.openness() - low.openness()) / (high.volts() - low.volts());
      add(part, gain, low.openness() - gain * low.volts(), Target.Zone.BETWEEN);
    }
  }

  private void add(Piece part, double gain, double offset, Target.Zone zone) {
    Piece seen =
        new Piece(
            part.start(),
            part.end(),
            offset + (gain == 0 ? 0 : gain * part.constant()),
            gain * part.slope(),
            gain * part.amplitude(),
            part.timeConstant(),
            part.segment());
    targets.add(new Target(seen, zone));
    touchesCeiling |= zone == Target.Zone.CEILING;
  }

  private void touch(double volts) {
    touchesCeiling |= volts >= volts(knots.size() - 1) - ON_KNOT_VOLTS;
  }

  private boolean inside(int knot) {
    return knot >= 0 && knot < knots.size();
  }

  private double volts(int knot) {
    return knots.get(knot).volts();
  }

  private static double ahead(double from, double to, int direction) {
    return (to - from) * direction;
  }

  private double held(double volts) {
    for (Transfer.Knot knot : knots) {
      if (Math.abs(volts - knot.volts()) <= ON_KNOT_VOLTS) {
        return knot.volts();
      }
    }
    return volts;
  }

  private Target.Zone zoneOfHeld(double volts) {
    if (volts <= volts(0)) {
      return Target.Zone.SHUT;
    }
    return volts >= volts(knots.size() - 1) ? Target.Zone.CEILING : Target.Zone.BETWEEN;
  }

  private double openness(double volts) {
    if (volts <= volts(0)) {
      return 0;
    }
    for (int i = 1; i < knots.size(); i++) {
      Transfer.Knot high = knots.get(i);
      if (volts <= high.volts()) {
        Transfer.Knot low = knots.get(i - 1);
        double share = (volts - low.volts()) / (high.volts() - low.volts());
        return low.openness() + (high.openness() - low.openness()) * share;
      }
    }
    return 1;
  }
}
