package thudbook.gates;

import org.jspecify.annotations.Nullable;
import thudbook.quantities.Check;

/**
 * One part of a photoresistor's state, which opens and falls with its own time constants.
 *
 * @param share its share of the whole, above 0 and at most 1
 * @param releaseSeconds time constant of falling, 1 µs to 60 s
 * @param openingSeconds time constant of opening, 1 µs to 60 s; null: the channel's
 */
public record Cell(double share, double releaseSeconds, @Nullable Double openingSeconds) {
  public Cell {
    Check.inRange("share", share, 1e-9, 1);
    Check.positiveTime("release time", releaseSeconds);
    if (openingSeconds != null) {
      Check.positiveTime("opening", openingSeconds);
    }
  }
}
