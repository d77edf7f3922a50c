package thudbook.pages;

import java.util.List;
import java.util.Objects;
import thudbook.equipment.GateHistory;
import thudbook.equipment.ModuleStore;
import thudbook.recipes.RecipeStore;
import thudbook.sessions.SessionStore;

/**
 * What lies in the bin, latest first.
 *
 * @param full whether there may be more recipes than are listed
 */
public record BinSheet(
    List<Item> recipes, List<Item> gates, List<Item> modules, List<Item> sessions, boolean full) {
  /** So many recipes are listed. */
  static final int ROWS = 200;

  /**
   * One thing.
   *
   * @param restore where the form that takes it out is sent
   */
  public record Item(String title, String address, String restore, TimeOfRecord at) {}

  static BinSheet of(
      RecipeStore recipes, GateHistory gates, ModuleStore modules, SessionStore sessions) {
    List<Item> binned =
        recipes.binned(ROWS).stream()
            .map(
                stored ->
                    new Item(
                        stored.recipe().title(),
                        "/recipes/" + stored.recipe().slug(),
                        "/bin/recipes/" + stored.recipe().id(),
                        TimeOfRecord.of(Objects.requireNonNull(stored.binnedAt()))))
            .toList();
    return new BinSheet(
        binned,
        gates.binned().stream()
            .map(
                stored ->
                    new Item(
                        stored.gate().title(),
                        "/gates/" + stored.gate().slug(),
                        "/bin/gates/" + stored.gate().id(),
                        TimeOfRecord.of(Objects.requireNonNull(stored.binnedAt()))))
            .toList(),
        modules.binned().stream()
            .map(
                stored ->
                    new Item(
                        stored.module().label() + " " + stored.module().title(),
                        "/equipment/" + stored.module().slug(),
                        "/bin/modules/" + stored.module().id(),
                        TimeOfRecord.of(Objects.requireNonNull(stored.binnedAt()))))
            .toList(),
        sessions.binned().stream()
            .map(
                stored ->
                    new Item(
                        stored.session().title(),
                        "/sessions/" + stored.session().slug(),
                        "/bin/sessions/" + stored.session().id(),
                        TimeOfRecord.of(Objects.requireNonNull(stored.binnedAt()))))
            .toList(),
        binned.size() == ROWS);
  }
}
