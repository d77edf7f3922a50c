package thudbook.yardstick;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import thudbook.gates.Cell;
import thudbook.gates.Channel;
import thudbook.gates.Transfer;
import thudbook.yardstick.LiteralVoltage.Segment;

/** The cells of one channel behind a literal control voltage, integrated up to a horizon. */
public final class IntegratedMotion {
  private final LiteralVoltage voltage;
  private final Channel channel;
  private final List<IntegratedCell> cells = new ArrayList<>();
  private final NavigableSet<Double> corners = new TreeSet<>();
  private final double horizon;

  /**
   * Integrates from rest.
   *
   * @param horizon last time that may be asked for, in seconds
   * @param tolerance absolute and relative tolerance of each step
   */
  public IntegratedMotion(
      LiteralVoltage voltage, Channel channel, double horizon, double tolerance) {
    this.voltage = voltage;
    this.channel = channel;
    this.horizon = horizon;
    double rest = target(voltage.restVolts());
    for (Cell cell : channel.cells().list()) {
      Double own = cell.openingSeconds();
      cells.add(
          new IntegratedCell(
              own == null ? channel.cells().openingSeconds() : own,
              cell.releaseSeconds(),
              rest,
              tolerance));
    }
    for (Segment segment : voltage.segments()) {
      follow(segment);
    }
  }

  private void follow(Segment segment) {
    double end = Math.min(segment.end(), horizon);
    if (segment.start() >= end) {
      return;
    }
    NavigableSet<Double> cuts = cuts(segment, end);
    corners.addAll(cuts);
    DoubleUnaryOperator target = t -> target(voltage.at(segment, t));
    Double from = cuts.first();
    for (Double to : cuts.tailSet(from, false)) {
      for (IntegratedCell cell : cells) {
        cell.follow(target, from, to);
      }
      from = to;
    }
  }

  /** The segment's ends, and where its voltage passes a knot or a rail, by bisection. */
  private NavigableSet<Double> cuts(Segment segment, double end) {
    NavigableSet<Double> cuts = new TreeSet<>(List.of(segment.start(), end));
    List<Double> levels = new ArrayList<>();
    channel.transfer().knots().forEach(knot -> levels.add(knot.volts()));
    levels.add(voltage.railVolts());
    levels.add(-voltage.railVolts());
    for (double level : levels) {
      double crossing = crossing(segment, level, end);
      if (crossing > segment.start() && crossing < end) {
        cuts.add(crossing);
      }
    }
    return cuts;
  }

  /** Where the unclamped voltage of a segment passes a level; NaN if it does not. */
  static double crossing(Segment segment, double level, double end) {
    double low = segment.start();
    double high = end;
    boolean above = segment.unclamped().applyAsDouble(low) > level;
    if (above == segment.unclamped().applyAsDouble(high) > level) {
      return Double.NaN;
    }
    for (int i = 0; i < 200 && low < high; i++) {
      double middle = low + (high - low) / 2;
      if (middle == low || middle == high) {
        break;
      }
      if (segment.unclamped().applyAsDouble(middle) > level == above) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /** u = T(CV), read off the knots. */
  public double target(double volts) {
    List<Transfer.Knot> knots = channel.transfer().knots();
    if (volts <= knots.get(0).volts()) {
      return 0;
    }
    for (int i = 1; i < knots.size(); i++) {
      Transfer.Knot a = knots.get(i - 1);
      Transfer.Knot b = knots.get(i);
      if (volts < b.volts()) {
        double x = (volts - a.volts()) / (b.volts() - a.volts());
        return a.openness() + x * (b.openness() - a.openness());
      }
    }
    return 1;
  }

  /** The state of a cell; before the first strike at rest, after the horizon as there. */
  public double cell(int index, double seconds) {
    if (seconds < 0) {
      return target(voltage.restVolts());
    }
    return cells.get(index).at(Math.min(seconds, horizon));
  }

  /** y = Σ wᵢ yᵢ. */
  public double openness(double seconds) {
    double sum = 0;
    for (int i = 0; i < cells.size(); i++) {
      sum += channel.cells().list().get(i).share() * cell(i, seconds);
    }
    return sum;
  }

  /** Every corner of the target from 0 to the horizon. */
  public NavigableSet<Double> corners() {
    return corners;
  }

  /** How often the right-hand sides were evaluated. */
  public int evaluations() {
    return cells.stream().mapToInt(IntegratedCell::evaluations).sum();
  }
}
