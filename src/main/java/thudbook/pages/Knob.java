package thudbook.pages;

import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import thudbook.quantities.Dimension;
import thudbook.quantities.Position;
import thudbook.recipes.Recipe;

/**
 * A knob or switch, as it is shown.
 *
 * @param sets which value of the sound it sets, in words; empty: none
 */
public record Knob(String module, String control, String at, String sets) {
  /** A longer value, such as a list of strikes, is not repeated beside its knob. */
  private static final int LONG = 48;

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("h:mm", Locale.ROOT);

  /** A setting of a recipe, with the values of its sound by key. */
  static Knob of(Recipe.Setting setting, Map<String, Entry> values) {
    String key = setting.forValue();
    String sets = "";
    if (key != null) {
      Entry value = values.get(key);
      if (value == null) {
        sets = key;
      } else {
        sets = value.value().length() > LONG ? value.name() : value.name() + " " + value.value();
      }
    }
    return new Knob(setting.module(), setting.control(), position(setting.at()), sets);
  }

  /** A position as it is read on a panel. */
  static String position(Position position) {
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
