package thudbook.pages.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import thudbook.recipes.Recipe;
import thudbook.wording.Entry;

/**
 * A recipe as text to be copied.
 *
 * @param address of its page
 * @param plain for people
 * @param document for another notebook
 */
public record PlainText(String title, String address, String plain, String document) {
  private static final int MOST_ROWS = 40;

  /** The text of a recipe. */
  static PlainText of(RecipeSheet sheet, String document) {
    Recipe recipe = sheet.recipe();
    List<String> lines = new ArrayList<>(List.of(recipe.title()));
    if (recipe.heard() != null) {
      lines.add(recipe.heard());
    }
    if (!recipe.tags().isEmpty()) {
      lines.add("Tags: " + String.join(", ", recipe.tags()));
    }
    sheet.played().forEach(block -> section(lines, block.title(), block.entries()));
    for (StageView stage : sheet.stages()) {
      section(lines, stage.heading(), stage.drive());
      if (!stage.envelope().isEmpty()) {
        section(lines, stage.heading() + ": its own envelope", stage.envelope());
      }
    }
    if (!recipe.connections().isEmpty()) {
      lines.addAll(List.of("", "Connections"));
      for (int i = 0; i < recipe.connections().size(); i++) {
        Recipe.Connection connection = recipe.connections().get(i);
        lines.add((i + 1) + ". " + connection.out() + " to " + connection.in());
      }
    }
    if (!sheet.knobs().isEmpty()) {
      lines.addAll(List.of("", "Settings"));
      sheet.knobs().forEach(k -> lines.add(k.module() + " " + k.control() + ": " + k.at()));
    }
    section(lines, "Behind the low-pass gate", sheet.onward());
    if (!recipe.notes().isEmpty()) {
      lines.addAll(List.of("", recipe.notes()));
    }
    lines.addAll(List.of("", "Monitors down before you connect anything."));
    String plain = lines.stream().collect(Collectors.joining("\n")).replace('\u00a0', ' ');
    return new PlainText(recipe.title(), "/recipes/" + recipe.slug(), plain + "\n", document);
  }

  private static void section(List<String> lines, String title, List<Entry> entries) {
    if (!entries.isEmpty()) {
      lines.addAll(List.of("", title));
      entries.forEach(
          entry ->
              lines.add(
                  entry.value().isEmpty() ? entry.name() : entry.name() + ": " + entry.value()));
    }
  }

  /** How many rows the text for people takes. */
  public int plainRows() {
    return rows(plain);
  }

  /** How many rows the document takes. */
  public int documentRows() {
    return rows(document);
  }

  private static int rows(String text) {
    return (int) Math.min(MOST_ROWS, text.lines().count() + 1);
  }
}
