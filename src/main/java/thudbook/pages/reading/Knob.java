package thudbook.pages.reading;

import java.util.Map;
import thudbook.recipes.Recipe;
import thudbook.wording.Entry;
import thudbook.wording.PositionWords;

/**
 * A knob or switch, as it is shown.
 *
 * @param sets which value of the sound it sets, in words; empty: none
 */
public record Knob(String module, String control, String at, String sets) {
  /** A longer value, such as a list of strikes, is not repeated beside its knob. */
  private static final int LONG = 48;

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
    return new Knob(setting.module(), setting.control(), PositionWords.of(setting.at()), sets);
  }
}
