package thudbook.plots;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import thudbook.gates.Cell;
import thudbook.gates.Channel;
import thudbook.wording.ReadableNumbers;

/**
 * How a channel falls by itself when it is told to close at once from fully open: y(t) = Σ wᵢ
 * e^(−t/τᵢ), with the shares wᵢ and release time constants τᵢ of its cells.
 */
final class NaturalRelease {
  private NaturalRelease() {}

  /** The openness so long after closing, 0 to 1. */
  static double openness(Channel channel, double seconds) {
    double sum = 0;
    for (Cell cell : channel.cells().list()) {
      sum += cell.share() * Math.exp(-seconds / cell.releaseSeconds());
    }
    return Math.min(1, sum);
  }

  /** Until 60 dB down, or as near to the floor as can be seen. */
  static double end(Channel channel) {
    double floor = ChannelPlots.levelDb(channel, 0);
    return channel.response().level().isPresent() && floor < -1
        ? firstBelow(
                t -> ChannelPlots.levelDb(channel, openness(channel, t)),
                Math.max(-60, floor + 0.5))
            * 1.1
        : firstBelow(t -> openness(channel, t), 0.001) * 1.1;
  }

  /** What it does, in words and numbers. */
  static String words(Channel channel) {
    List<String> words = new ArrayList<>();
    if (channel.response().level().isPresent()) {
      for (int down : new int[] {20, 40, 60}) {
        if (ChannelPlots.levelDb(channel, 0) < -down) {
          double at = firstBelow(t -> ChannelPlots.levelDb(channel, openness(channel, t)), -down);
          words.add("−" + down + " dB after " + ReadableNumbers.seconds(at));
        }
      }
    }
    double half = firstBelow(t -> openness(channel, t), 0.5);
    words.add("half open after " + ReadableNumbers.seconds(half));
    return "Falls to " + String.join(", ", words) + ".";
  }

  /** When a falling function of time falls below a limit, to one part in a million. */
  private static double firstBelow(DoubleUnaryOperator falling, double limit) {
    double high = 1e-6;
    while (high < 1000 && falling.applyAsDouble(high) > limit) {
      high *= 2;
    }
    double low = 0;
    while (high - low > 1e-6 * high) {
      double middle = (low + high) / 2;
      if (falling.applyAsDouble(middle) > limit) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }
}
