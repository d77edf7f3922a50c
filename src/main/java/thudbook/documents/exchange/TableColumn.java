package thudbook.documents.exchange;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A column of a table of recipes: the field of a form that it fills, its unit, and what else people
 * call it. A star in a field stands for the kind of source or envelope.
 */
enum TableColumn {
  TITLE("title", "title", "", "name", "recipe", "sound", "patch"),
  TAGS("tags", "tags", "", "tag", "keywords"),
  BY("by", "by", "", "author", "made by", "player"),
  MADE("made", "made", "", "date", "day"),
  HEARD("heard", "heard", "", "sounds like", "by ear", "description"),
  RATING("rating", "rating", "", "stars"),
  SOURCE("source", "source.kind", "", "source kind", "kind of source"),
  COLOUR("noise colour", "source.noise.colour", "", "colour", "noise"),
  FREQUENCY("frequency", "source.oscillator.frequency", "Hz", "pitch", "oscillator frequency"),
  CARRIER("carrier", "source.fm.carrier", "Hz", "carrier frequency"),
  MODULATOR("modulator", "source.fm.modulator", "", "modulator frequency", "ratio"),
  INDEX("index", "source.fm.index", "", "modulation index", "fm index"),
  WAVE("wave", "source.*.wave", "", "waveform"),
  ENVELOPE("envelope", "envelope.kind", "", "envelope kind", "kind of envelope"),
  PEAK("peak", "envelope.*.peak", "V", "peak voltage", "envelope peak"),
  ATTACK("attack", "envelope.*.attack", "ms", "attack time", "rise"),
  HOLD("hold", "envelope.*.hold", "ms", "hold time"),
  DECAY("decay", "envelope.*.decay", "ms", "decay time", "fall"),
  SUSTAIN("sustain", "envelope.*.sustain", "", "sustain level"),
  LENGTH("length", "envelope.*.length", "ms", "pulse length", "key length"),
  RELEASE("release", "envelope.*.release", "ms", "release time"),
  GATE("gate", "stages.0.gate", "", "low-pass gate", "module"),
  CHANNEL("channel", "stages.0.channel", "", "gate channel"),
  GAIN("gain", "stages.0.gain", "", "control gain"),
  OFFSET("offset", "stages.0.offset", "V", "control offset"),
  ROOM("room", "room", "", "place"),
  NOTES("notes", "notes", "", "note", "remarks", "comment");

  private static final String SOURCES = "source.";

  private final String title;
  private final String field;
  private final String unit;

  @SuppressWarnings("ImmutableEnumChecker") // List.of can't be changed
  private final List<String> synonyms;

  TableColumn(String title, String field, String unit, String... synonyms) {
    this.title = title;
    this.field = field;
    this.unit = unit;
    this.synonyms = List.of(synonyms);
  }

  /** The columns of a table that is written. */
  static List<TableColumn> written() {
    return List.of(values());
  }

  /** Its name and unit, such as {@code decay (ms)}. */
  String header() {
    return unit.isEmpty() ? title : title + " (" + unit + ")";
  }

  /** The column that people call so. */
  static @Nullable TableColumn named(String words) {
    String name = words.strip().toLowerCase(Locale.ROOT).replace('_', ' ');
    return Arrays.stream(values())
        .filter(column -> column.title.equals(name) || column.synonyms.contains(name))
        .findFirst()
        .orElse(null);
  }

  /** Whether a fault at a place belongs into this column. */
  boolean isAt(String place) {
    String path = place.replaceFirst("^/", "").replace('/', '.');
    return path.equals(field)
        || path.matches(field.replace(".", "\\.").replace("*", "([a-z-]+\\.)?[a-z-]+"))
        || path.equals(field.replace("*.", ""));
  }

  /** What stands in its cell; without the unit where that is the column's own. */
  String cell(Map<String, List<String>> form) {
    String words = String.join(", ", form.getOrDefault(fieldIn(form), List.of()));
    return !unit.isEmpty() && words.endsWith(" " + unit)
        ? words.substring(0, words.length() - unit.length() - 1)
        : words;
  }

  private String fieldIn(Map<String, List<String>> form) {
    String kind = field.startsWith(SOURCES) ? "source.kind" : "envelope.kind";
    return field.replace("*", String.join("", form.getOrDefault(kind, List.of())));
  }

  /** The form that cells fill; a kind that nobody wrote follows from what is there. */
  static Map<String, List<String>> form(Map<TableColumn, String> cells) {
    Map<TableColumn, String> whole = new EnumMap<>(TableColumn.class);
    whole.putAll(cells);
    if (!whole.containsKey(SOURCE)) {
      String kind = source(cells);
      if (!kind.isEmpty()) {
        whole.put(SOURCE, kind);
      }
    }
    if (!whole.containsKey(ENVELOPE)) {
      String kind = envelope(cells);
      if (!kind.isEmpty()) {
        whole.put(ENVELOPE, kind);
      }
    }
    Map<String, List<String>> form = new LinkedHashMap<>();
    whole.forEach(
        (column, cell) -> {
          String kind =
              whole.getOrDefault(column.field.startsWith(SOURCES) ? SOURCE : ENVELOPE, "");
          boolean loose = column.field.contains("*") && kind.isEmpty();
          if (!loose) {
            form.put(column.field.replace("*", kind), List.of(cell));
          }
        });
    return form;
  }

  private static String source(Map<TableColumn, String> cells) {
    if (cells.containsKey(CARRIER) || cells.containsKey(MODULATOR) || cells.containsKey(INDEX)) {
      return "fm";
    }
    if (cells.containsKey(FREQUENCY)) {
      return "oscillator";
    }
    return cells.containsKey(COLOUR) ? "noise" : "";
  }

  private static String envelope(Map<TableColumn, String> cells) {
    if (cells.containsKey(SUSTAIN) || cells.containsKey(RELEASE)) {
      return "attack-decay-sustain-release";
    }
    if (cells.containsKey(DECAY)) {
      return "attack-hold-decay";
    }
    return cells.containsKey(LENGTH) ? "pulse" : "";
  }
}
