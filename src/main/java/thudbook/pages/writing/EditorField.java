package thudbook.pages.writing;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One field of the editor, as it is shown.
 *
 * @param name the pointer of its value with dots, such as {@code envelope.pulse.peak}
 * @param label in words, without the unit
 * @param range what may stand there; empty where that goes without saying
 * @param help one line about what it does
 * @param value what stands there
 * @param usual what counts where nothing stands, or an example
 * @param look how it is typed or chosen
 * @param options what can be chosen
 * @param turn how a slider beside it turns; null: it has none
 * @param list the name of the list of words that are suggested; empty: none
 * @param fault what is wrong with it; empty: nothing
 */
public record EditorField(
    String name,
    String label,
    String range,
    String help,
    String value,
    String usual,
    Look look,
    List<Option> options,
    @Nullable Turn turn,
    String list,
    String fault) {

  /** How a field is typed or chosen. */
  public enum Look {
    LINE,
    /** A few words of a number, with its unit. */
    NUMBER,
    LINES,
    CHOICE
  }

  /**
   * Something to choose.
   *
   * @param group what it belongs to; empty: nothing
   */
  public record Option(String value, String label, String group) {
    static Option of(String value, String label) {
      return new Option(value, label, "");
    }
  }

  /**
   * How a slider turns a number.
   *
   * @param even whether equal ways add equally; otherwise they multiply
   * @param least in the unit
   * @param most in the unit
   * @param unit of documents; empty: none
   */
  public record Turn(boolean even, double least, double most, String unit) {}

  /** The id of its element. */
  public String id() {
    return "f-" + name;
  }

  /** Whether something is wrong with it. */
  public boolean faulty() {
    return !fault.isEmpty();
  }

  /** Whether an option is the one that is chosen. */
  public boolean isChosen(Option option) {
    return option.value().equals(value);
  }

  /** The groups of its options, each once; of those without one the empty name. */
  public List<String> groups() {
    return options.stream().map(Option::group).distinct().toList();
  }

  /** The options of a group. */
  public List<Option> in(String group) {
    return options.stream().filter(option -> option.group().equals(group)).toList();
  }
}
