package thudbook.drawings;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * An axis with its labelled ticks and the fine lines of graph paper between them.
 *
 * @param title what it shows, with the unit
 * @param ticks labelled places
 * @param fine places of unlabelled lines
 */
public record Axis(String title, Scale scale, List<Tick> ticks, List<Double> fine) {
  public Axis {
    ticks = List.copyOf(ticks);
    fine = List.copyOf(fine);
  }

  /**
   * A linear axis with ticks at multiples of 1, 2 or 5 times a power of ten.
   *
   * @param most the largest number of ticks, at least 2
   */
  public static Axis linear(
      String title, double from, double to, int most, DoubleFunction<String> label) {
    double step = step(to - from, most);
    List<Tick> ticks = new ArrayList<>();
    // Multiples are counted, not added up, so that 0 is 0.
    for (long n = (long) Math.ceil(from / step - 1e-9); n * step <= to + step * 1e-9; n++) {
      ticks.add(new Tick(n * step, label.apply(n * step), n % 2 == 0 ? 0 : 1));
    }
    double fineStep = step / (leadingDigit(step) == 2 ? 4 : 5);
    List<Double> fine = new ArrayList<>();
    for (long n = (long) Math.ceil(from / fineStep - 1e-9); n * fineStep <= to; n++) {
      fine.add(n * fineStep);
    }
    return new Axis(title, Scale.linear(from, to), ticks, fine);
  }

  /**
   * A bent axis with ticks at 0, if it is on it, and above 0 at 1, 2 and 5 times powers of ten: for
   * times after a strike and for frequencies.
   *
   * @param least the smallest tick above 0, 1, 2 or 5 times a power of ten
   */
  public static Axis bent(String title, Scale scale, double least, DoubleFunction<String> label) {
    List<Tick> ticks = new ArrayList<>();
    List<Double> fine = new ArrayList<>();
    if (scale.from() <= 0) {
      ticks.add(new Tick(0, label.apply(0), 0));
    }
    for (int decade = (int) Math.floor(Math.log10(least)); decade < 9; decade++) {
      double power = Math.pow(10, decade);
      for (int digit = 1; digit <= 9; digit++) {
        // Divided rather than multiplied by 10^-n, so that 0.3 is written 0.3.
        double at = decade < 0 ? digit / Math.pow(10, -decade) : digit * power;
        if (at < Math.max(least * (1 - 1e-9), scale.from()) || at > scale.to()) {
          continue;
        }
        fine.add(at);
        if (digit == 1 || digit == 2 || digit == 5) {
          ticks.add(new Tick(at, label.apply(at), digit == 1 ? 1 : digit == 5 ? 2 : 3));
        }
      }
    }
    return new Axis(title, scale, ticks, fine);
  }

  /** The smallest of 1, 2, 5 times a power of ten that needs at most so many steps. */
  static double step(double span, int most) {
    double raw = span / Math.max(1, most - 1);
    double power = Math.pow(10, Math.floor(Math.log10(raw)));
    for (int digit : new int[] {1, 2, 5}) {
      if (digit * power >= raw * (1 - 1e-9)) {
        return digit * power;
      }
    }
    return 10 * power;
  }

  private static long leadingDigit(double step) {
    return Math.round(step / Math.pow(10, Math.floor(Math.log10(step) + 1e-9)));
  }
}
