package thudbook.pages.writing;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thudbook.pages.reading.RecipeSheet;

/**
 * The page on which a recipe is written.
 *
 * @param heading of the page
 * @param action where it is saved
 * @param noted what the page itself has to know, by name without {@code form.}, and the id
 * @param derivedFrom the recipe that this one varies; null: none
 * @param faults everything that is wrong with it, to be read before the form
 * @param parts the fields in parts, by the name of the part
 * @param opened parts that are open at first
 * @param stages one at least
 * @param notesHtml the notes as they will be shown; safe
 * @param drafts what was begun and not saved
 * @param back where to go without saving
 */
public record EditorSheet(
    String heading,
    String action,
    Map<String, String> noted,
    RecipeSheet.@Nullable Parent derivedFrom,
    List<EditorFault> faults,
    Map<String, List<EditorField>> parts,
    Set<String> opened,
    Kinds source,
    Kinds envelope,
    Kinds strikes,
    List<Stage> stages,
    List<Rows> rows,
    String notesHtml,
    Map<String, List<String>> suggestions,
    List<DraftLine> drafts,
    EditorAnswer answer,
    String back) {

  /**
   * A block of which there are kinds: one is chosen, and what was typed for the others stays.
   *
   * @param name such as {@code source}
   * @param chosen the kind that counts; empty: none
   */
  public record Kinds(String name, String legend, String chosen, List<Kind> kinds, String fault) {
    /** Whether a kind is the chosen one. */
    public boolean isChosen(Kind kind) {
      return kind.value().equals(chosen);
    }
  }

  /**
   * One kind of a block.
   *
   * @param value empty: the block is not written
   * @param first the fields that a quick entry needs
   * @param more the others, which have a default
   */
  public record Kind(String value, String label, List<EditorField> first, List<EditorField> more) {}

  /**
   * One stage.
   *
   * @param number from 1
   * @param gate gate and channel
   * @param drive the control drive
   * @param tried a channel to try out
   * @param envelope an envelope of its own
   * @param opened whether its drive is open at first
   */
  public record Stage(
      int number,
      List<EditorField> gate,
      List<EditorField> drive,
      EditorField tried,
      Kinds envelope,
      boolean opened) {}

  /**
   * A list of rows.
   *
   * @param name such as {@code connections}
   * @param title of its part
   * @param add what the button for another row says; empty: none can be added
   * @param count how many are written
   */
  public record Rows(
      String name,
      String title,
      String help,
      String add,
      int count,
      List<String> header,
      List<List<EditorField>> rows) {}

  /** A draft: what it is called, how old it is, and where it goes on. */
  public record DraftLine(
      String key, String title, String subject, String keptAt, String keptIso, String address) {}

  /** The first field that has no part of its own. */
  public EditorField field(String part) {
    return fields(part).get(0);
  }

  /** The fields of a part. */
  public List<EditorField> fields(String part) {
    return parts.getOrDefault(part, List.of());
  }

  /** Whether a part is open at first. */
  public boolean isOpen(String part) {
    return opened.contains(part);
  }
}
