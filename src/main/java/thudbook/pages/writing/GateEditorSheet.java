package thudbook.pages.writing;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thudbook.recipes.RecipeStore;

/**
 * The page on which a gate is written.
 *
 * @param action where it is saved
 * @param noted what the page itself has to know, by name
 * @param faults everything that is wrong with it, to be read before the form
 * @param guard what recipes would lose; null: nothing
 * @param names the fields of its address, less often needed
 * @param notesHtml the notes as they will be shown; safe
 * @param drafts what was begun and not saved
 * @param back where to go without saving
 */
public record GateEditorSheet(
    String heading,
    String action,
    Map<String, String> noted,
    List<EditorFault> faults,
    @Nullable Guard guard,
    EditorField title,
    List<Channel> channels,
    boolean mayAdd,
    EditorField caution,
    EditorField notes,
    EditorField names,
    String notesHtml,
    List<EditorSheet.DraftLine> drafts,
    GateAnswer answer,
    String back) {

  /**
   * One channel.
   *
   * @param number from 1
   * @param was its name as it is saved; empty: it is new
   * @param uses the recipes that use it
   * @param cells share, release and opening of each cell
   * @param opened whether the fields with defaults are open at first
   */
  public record Channel(
      int number,
      String was,
      List<RecipeStore.Use> uses,
      List<EditorField> first,
      EditorField transfer,
      List<List<EditorField>> cells,
      List<EditorField> sound,
      List<EditorField> more,
      List<EditorField> measured,
      boolean opened) {
    /** What it is called on the page. */
    public String heading() {
      return was.isEmpty() ? "Channel " + number : "Channel " + was;
    }
  }

  /** Recipes that stand in the way of a change. */
  public record Guard(String title, List<Line> lines) {
    /** One recipe, and what it would lose. */
    public record Line(String message, String address) {}
  }
}
