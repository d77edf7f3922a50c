package thudbook.documents;

import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What the keys of documents are called in a sentence; the pages use the same words. */
final class KeyWords {
  private static final Pattern INDEX = Pattern.compile("/[0-9]+");
  private static final Map<String, String> NAMES = new HashMap<>();

  /** One row of a list. */
  private static final Map<String, String> ROWS =
      Map.of(
          "/tags", "tag",
          "/connections", "connection",
          "/settings", "setting",
          "/mix", "mix",
          "/after", "treatment",
          "/photos", "photo",
          "/with", "person",
          "/recipes", "recipe");

  static {
    recipe();
    envelope("/envelope", "");
    envelope("/stages/envelope", "own ");
    stage();
    gate();
    channel();
    put("/date", "day");
    module();
  }

  private KeyWords() {}

  /** The name of what a pointer leads to, without the stage or the channel that it is of. */
  static String name(String pointer) {
    String key = INDEX.matcher(pointer).replaceAll("");
    String name = NAMES.get(key);
    return name == null ? key.substring(key.lastIndexOf('/') + 1) : name;
  }

  /** The name of one row of the list that a pointer leads to; null: it is no such list. */
  static @Nullable String row(String pointer) {
    return ROWS.get(pointer);
  }

  private static void recipe() {
    put("/slug", "address");
    put("/tags", "tags");
    put("/by", "maker");
    put("/made", "day");
    put("/derivedFrom", "parent");
    put("/heard", "what is heard");
    put("/source/kind", "source");
    put("/source/from", "lower edge of the noise");
    put("/source/to", "upper edge of the noise");
    put("/source/wave", "wave");
    put("/source/level", "source level");
    put("/strikes/every", "time between strikes");
    put("/strikes/count", "number of strikes");
    put("/strikes/at", "times of the strikes");
    put("/output/coupling", "coupling high-pass");
    put("/after", "treatment");
    put("/with", "people");
  }

  private static void envelope(String at, String whose) {
    put(at + "/kind", whose + "envelope");
    for (String key : new String[] {"peak", "attack", "hold", "decay", "sustain", "release"}) {
      put(at + "/" + key, whose + key);
    }
    put(at + "/length", whose + "length");
    put(at + "/attackCurve", whose + "curve of the attack");
    put(at + "/overshoot", whose + "overshoot");
    put(at + "/decayCurve", whose + "curve of the decay");
    put(at + "/decaysTo", whose + "end of the decay");
    put(at + "/releaseCurve", whose + "curve of the release");
    put(at + "/releasesTo", whose + "end of the release");
    put(at + "/samples", whose + "recorded samples");
  }

  private static void stage() {
    put("/stages/gate", "low-pass gate");
    put("/stages/gain", "control gain");
    put("/stages/offset", "control offset");
    put("/stages/controlRail", "control rail");
  }

  private static void gate() {
    put("/channels/cutoff/closed", "closed cutoff");
    put("/channels/cutoff/open", "open cutoff");
    put("/channels/exponents/level", "level exponent");
    put("/channels/exponents/cutoff", "cutoff exponent");
    put("/channels/outputRail", "output rail");
  }

  private static void channel() {
    put("/channels/measured/how", "way of measuring");
    put("/channels/measured/date", "day of measuring");
    put("/channels/measured/warmUp", "warm-up");
  }

  private static void module() {
    put("/warmUp", "warm-up");
    put("/controls", "controls");
    put("/controls/by", "switch that it depends on");
    put("/controls/sweep", "sweep");
    put("/controls/tolerance", "read-back tolerance");
    put("/ports/carries", "signal");
  }

  private static void put(String key, String name) {
    NAMES.put(key, name);
  }
}
