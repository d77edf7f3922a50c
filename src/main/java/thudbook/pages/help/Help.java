package thudbook.pages.help;

import java.util.List;
import java.util.Optional;

/**
 * A page of the help.
 *
 * @param slug its name below {@code /help}
 * @param summary what it tells, in one sentence
 */
public record Help(String slug, String title, String summary) {
  /** The pages, in the order in which they are listed. */
  public static final List<Help> PAGES =
      List.of(
          new Help(
              "model",
              "What a low-pass gate does",
              "The model in plain words, with its formulas and where they come from."),
          new Help(
              "numbers",
              "What the numbers mean",
              "Every number of a recipe, with its definition and its unit."),
          new Help(
              "writing",
              "Writing a recipe",
              "The form, what it answers, and how nothing typed is lost."),
          new Help(
              "finding",
              "Finding",
              "Words, sentences, filters, orders, likeness, tags and shelves."),
          new Help("cautions", "Cautions", "Thumps, ears, tubes, and the order of a safe recall."),
          new Help(
              "file-format",
              "The file format",
              "How recipes, gates and modules are written as text files, with every key."),
          new Help(
              "history",
              "History, bin and undo",
              "Every state that was saved, going back, comparing, and taking things back."),
          new Help(
              "gates",
              "Writing gates down",
              "Which numbers a channel has, where to find them, and what happens to recipes."),
          new Help(
              "equipment",
              "Equipment, knobs and cables",
              "Writing modules down, how knob positions become values, and what is checked."),
          new Help(
              "sessions",
              "Sessions and recall",
              "Planning a day, what gets into whose way, moves, sheets and ticking off."),
          new Help(
              "share",
              "Photos, sharing and keeping",
              "Taking documents and tables in, giving them out, photos, backups."),
          new Help("keys", "Keys", "Everything by keyboard."));

  /** The page of a slug, if there is one. */
  static Optional<Help> find(String slug) {
    return PAGES.stream().filter(page -> page.slug().equals(slug)).findFirst();
  }

  /** Where the page is. */
  public String address() {
    return "/help/" + slug;
  }

  /** The name of its template. */
  String template() {
    return "help/" + slug;
  }
}
