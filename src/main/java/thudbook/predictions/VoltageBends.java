package thudbook.predictions;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import thudbook.envelopes.ControlVoltage;
import thudbook.envelopes.Piece;
import thudbook.predictions.CurveLines.Line;

/**
 * Cuts the lines of a curve, one by one, where a control voltage looks worst between their ends, as
 * long as there are points left.
 */
final class VoltageBends {
  /** What straight lines may be off in the control voltage, as a share of its range. */
  private static final double TOLERANCE_VOLTAGE = 0.004;

  private final CurveLines lines;
  private final List<ControlVoltage> voltages;
  private final double range;

  VoltageBends(CurveLines lines, List<ControlVoltage> voltages) {
    this.lines = lines;
    this.voltages = voltages;
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (ControlVoltage voltage : voltages) {
      for (Piece piece : voltage.pieces()) {
        lowest = Math.min(lowest, Math.min(piece.first(), piece.last()));
        highest = Math.max(highest, Math.max(piece.first(), piece.last()));
      }
    }
    range = Math.max(highest - lowest, 1e-3);
  }

  /**
   * A line whose control voltage may be off.
   *
   * @param worstAt where it is worst
   * @param badness how much worse than its tolerance
   */
  private record Bend(Line line, double worstAt, double badness) {}

  /** Spends what is left of the points on the control voltage. */
  List<Line> smoothed(List<Line> given, int budget) {
    PriorityQueue<Bend> bends =
        new PriorityQueue<>(Comparator.comparingDouble(Bend::badness).reversed());
    given.forEach(line -> bends.add(bend(line)));
    List<Line> done = new ArrayList<>();
    int count = given.size();
    while (!bends.isEmpty()) {
      Bend worst = bends.remove();
      if (worst.badness() <= 1 || count >= budget) {
        done.add(worst.line());
        continue;
      }
      bends.add(bend(lines.line(worst.line().from(), worst.worstAt())));
      bends.add(bend(lines.line(worst.worstAt(), worst.line().to())));
      count++;
    }
    return done;
  }

  private Bend bend(Line line) {
    double length = line.to() - line.from();
    double worstAt = (line.from() + line.to()) / 2;
    double badness = 0;
    if (length > 1e-12 * Math.max(1, Math.abs(line.to()))) {
      for (double share : CurveLines.LOOKS) {
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
      double off = Math.abs(voltage.at(time) - straight) / range;
      worst = Math.max(worst, off / TOLERANCE_VOLTAGE);
    }
    return worst;
  }
}
