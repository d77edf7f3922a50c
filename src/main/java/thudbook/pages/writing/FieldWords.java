package thudbook.pages.writing;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thudbook.pages.writing.EditorField.Look;
import thudbook.pages.writing.EditorField.Option;
import thudbook.pages.writing.EditorField.Turn;
import thudbook.quantities.Dimension;
import thudbook.quantities.Range;

/**
 * What the fields of the editor are called, what may stand in them and what they do.
 *
 * @param usual what counts where nothing is written, or an example of what may be
 */
record FieldWords(
    String label,
    String range,
    String help,
    String usual,
    Look look,
    List<Option> options,
    @Nullable Turn turn) {
  private static final Map<String, FieldWords> ALL = new HashMap<>();

  static {
    ALL.putAll(new SoundFields().words());
    ALL.putAll(new PatchFields().words());
    ALL.putAll(GateFieldWords.all());
  }

  /** The words of a field, by its name; all stages, and all rows of a list, have the same. */
  static FieldWords of(String name) {
    String key =
        name.replaceAll("\\.[0-9]+\\.", ".N.").replaceFirst("^stages\\.N\\.envelope", "envelope");
    FieldWords words = ALL.get(key);
    if (words == null) {
      throw new IllegalArgumentException("no field " + name);
    }
    return words;
  }

  /** A range as a reader reads it. */
  static String said(Range range) {
    Dimension dimension = range.dimension();
    String words =
        (range.orZero() ? "0, " : "")
            + dimension.say(range.least())
            + " to "
            + dimension.say(range.most());
    return words.replace("-", "−");
  }
}
