package thudbook.pages.reading;

import java.util.List;
import thudbook.changes.Kept;
import thudbook.equipment.Gate;
import thudbook.pages.frame.Notes;
import thudbook.recipes.RecipeStore;
import thudbook.wording.Cautions;

/**
 * A gate as a page to read.
 *
 * @param notes safe HTML
 * @param uses the recipes that are played through it
 * @param version what an act on it has to name
 * @param binned whether it is in the bin
 */
public record GateSheet(
    Gate gate,
    List<ChannelView> channels,
    List<Cautions.Caution> cautions,
    String notes,
    List<RecipeStore.Use> uses,
    long version,
    boolean binned) {

  /** The page of a gate. */
  static GateSheet of(Kept<Gate> stored, RecipeStore recipes) {
    Gate gate = stored.thing();
    return new GateSheet(
        gate,
        gate.channels().stream().map(ChannelView::of).toList(),
        Cautions.of(gate),
        Notes.html(gate.notes()),
        recipes.using(gate.id()),
        stored.version(),
        stored.binnedAt() != null);
  }
}
