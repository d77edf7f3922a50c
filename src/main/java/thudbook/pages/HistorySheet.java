package thudbook.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;
import thudbook.access.Revision;
import thudbook.documents.DifferenceWords;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;
import thudbook.equipment.Module;
import thudbook.equipment.ModuleStore;
import thudbook.predictions.Metrics;
import thudbook.predictions.Predictor;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Resolution;

/**
 * Everything that a recipe, a gate or a module was, newest first, a page of it.
 *
 * @param address of its page
 * @param version what an act on it has to name
 * @param standing whether it can be changed: it is not in the bin
 * @param older address of the page of earlier revisions; null: this is the last
 * @param newest address of the first page; null: this is it
 * @param notice what a reader should know first; empty: nothing
 */
public record HistorySheet(
    String title,
    String address,
    long version,
    boolean standing,
    List<Line> lines,
    @Nullable String older,
    @Nullable String newest,
    String notice) {
  /** How many revisions stand on a page. */
  static final int ROWS = 20;

  /**
   * One saved state.
   *
   * @param what the act that made it, in words
   * @param differences from the one before, in words; empty for the first one
   * @param moved numbers that moved with them, all predicted with today's gates
   * @param comparison address of the comparison with today; empty: there is none
   * @param current whether it is what counts today
   */
  public record Line(
      int number,
      TimeOfRecord at,
      String author,
      String what,
      long change,
      List<String> differences,
      List<String> moved,
      String comparison,
      boolean current) {}

  /** What a recipe was. */
  static HistorySheet of(
      RecipeStore.Stored stored, RecipeStore recipes, GateStore gates, int below, String notice) {
    Recipe recipe = stored.recipe();
    List<Revision<Recipe>> revisions = recipes.revisions(recipe.id(), below, ROWS + 1);
    return new HistorySheet(
        recipe.title(),
        "/recipes/" + recipe.slug(),
        stored.version(),
        stored.binnedAt() == null,
        lines(
            revisions,
            stored.revision(),
            DifferenceWords::sentences,
            (before, after) ->
                MovedNumbers.words(predicted(before, gates), predicted(after, gates)),
            "/compare?of=" + recipe.slug() + "@%d," + recipe.slug()),
        older("/recipes/" + recipe.slug(), revisions),
        below == 0 ? null : "/recipes/" + recipe.slug() + "/history",
        notice);
  }

  /** What a gate was. */
  static HistorySheet of(
      GateStore.Stored stored, List<Revision<Gate>> revisions, int below, String notice) {
    Gate gate = stored.gate();
    return new HistorySheet(
        gate.title(),
        "/gates/" + gate.slug(),
        stored.version(),
        stored.binnedAt() == null,
        lines(
            revisions,
            stored.revision(),
            DifferenceWords::sentences,
            (before, after) -> List.of(),
            ""),
        older("/gates/" + gate.slug(), revisions),
        below == 0 ? null : "/gates/" + gate.slug() + "/history",
        notice);
  }

  /** What a module was. */
  static HistorySheet of(
      ModuleStore.Stored stored, List<Revision<Module>> revisions, int below, String notice) {
    Module module = stored.module();
    String address = "/equipment/" + module.slug();
    return new HistorySheet(
        module.label() + " " + module.title(),
        address,
        stored.version(),
        stored.binnedAt() == null,
        lines(
            revisions,
            stored.revision(),
            DifferenceWords::sentences,
            (before, after) -> List.of(),
            ""),
        older(address, revisions),
        below == 0 ? null : address + "/history",
        notice);
  }

  private static <T> List<Line> lines(
      List<Revision<T>> revisions,
      int current,
      BiFunction<T, T, List<String>> differences,
      BiFunction<T, T, List<String>> moved,
      String comparison) {
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < Math.min(ROWS, revisions.size()); i++) {
      Revision<T> revision = revisions.get(i);
      T before = i + 1 < revisions.size() ? revisions.get(i + 1).noun() : null;
      boolean isCurrent = revision.number() == current;
      List<String> told = before == null ? List.of() : differences.apply(before, revision.noun());
      lines.add(
          new Line(
              revision.number(),
              TimeOfRecord.of(revision.at()),
              revision.author().name(),
              what(revision.what(), told),
              revision.change(),
              told,
              before == null ? List.of() : moved.apply(before, revision.noun()),
              isCurrent || comparison.isEmpty() ? "" : String.format(comparison, revision.number()),
              isCurrent));
    }
    return lines;
  }

  /** The words of an act, unless they only say what the differences say. */
  private static String what(String what, List<String> differences) {
    String same = String.join("; ", differences).replace('\u00a0', ' ');
    return what.replace('\u00a0', ' ').equalsIgnoreCase(same) ? "saved" : what;
  }

  private static <T> @Nullable String older(String address, List<Revision<T>> revisions) {
    return revisions.size() <= ROWS
        ? null
        : address + "/history?below=" + revisions.get(ROWS - 1).number();
  }

  private static @Nullable Metrics predicted(Recipe recipe, GateStore gates) {
    return Resolution.of(recipe, gates)
        .complete()
        .map(sound -> Predictor.predict(sound).metrics())
        .orElse(null);
  }
}
