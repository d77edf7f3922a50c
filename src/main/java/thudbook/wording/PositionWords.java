package thudbook.wording;

import java.time.format.DateTimeFormatter;
import java.util.Locale;
import thudbook.quantities.Dimension;
import thudbook.quantities.Position;

/** Positions of knobs and switches in words. */
public final class PositionWords {
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("h:mm", Locale.ROOT);

  private PositionWords() {}

  /** A position as it is read on a panel. */
  public static String of(Position position) {
    if (position instanceof Position.Clock clock) {
      return CLOCK.format(clock.time());
    } else if (position instanceof Position.Angle angle) {
      return Reading.entered(angle.degrees()) + "°";
    } else if (position instanceof Position.Share share) {
      return Reading.enteredShare(share.share());
    } else if (position instanceof Position.Value value) {
      return value(value.si(), value.dimension());
    }
    return ((Position.Named) position).name();
  }

  private static String value(double si, Dimension dimension) {
    return switch (dimension) {
      case TIME -> Reading.enteredTime(si);
      case FREQUENCY -> Reading.enteredHertz(si);
      case SHARE -> Reading.enteredShare(si);
      case RATIO -> Reading.entered(si) + "\u00a0×";
      case NUMBER -> Reading.entered(si);
      default -> Reading.entered(si, dimension.unit());
    };
  }
}
