package thudbook.pages.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Differences;
import thudbook.documents.Slugs;
import thudbook.drawings.Format;
import thudbook.plots.DataTable;
import thudbook.plots.LevelsPlot;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.predictions.Sound;
import thudbook.recipes.HeardRecipe;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.wording.MetricWords;
import thudbook.wording.ReachWords;
import thudbook.wording.Reading;

/**
 * Recipes side by side.
 *
 * @param items up to {@value #MOST}
 * @param unknown what was asked for and is not there
 * @param tooMany whether more were asked for than have a place
 * @param differences of exactly two, value by value
 * @param numbers of all that can be predicted; null: none can
 * @param plot their shapes over each other as safe HTML; empty: none can be predicted
 * @param levels the plot as a table; null: there is no plot
 * @param asked what the address asks for, to be asked for again with one more
 */
public record Comparison(
    List<Item> items,
    List<String> unknown,
    boolean tooMany,
    List<Difference> differences,
    @Nullable DataTable numbers,
    String plot,
    @Nullable DataTable levels,
    String asked) {
  /** So many have lines that can be told apart. */
  public static final int MOST = 6;

  /** Looks of the lines; the fifth is what was there before. */
  private static final int[] LOOKS = {1, 2, 3, 4, 6, 7};

  /**
   * One recipe, or what it was.
   *
   * @param letter names it in the plot and in tables
   * @param detail which revision; empty: as it is
   * @param without address of the comparison without it
   * @param missing what keeps it from being predicted; empty: nothing
   */
  public record Item(
      String letter,
      String title,
      String detail,
      String address,
      String without,
      int look,
      List<String> missing) {
    /** Its letter and its name. */
    public String name() {
      return letter + ": " + title + (detail.isEmpty() ? "" : ", " + detail);
    }
  }

  /** One value that differs between two. */
  public record Difference(String name, String one, String other) {}

  /** A recipe that was asked for. */
  private record Found(String asked, Recipe recipe, String detail, String address) {}

  /**
   * Compares what was asked for.
   *
   * @param names slugs, ids or titles, with {@code @3} for a revision
   */
  static Comparison of(List<String> names, RecipeStore recipes, Listening listening) {
    List<Found> found = new ArrayList<>();
    List<String> unknown = new ArrayList<>();
    for (String name : names.stream().map(String::strip).distinct().toList()) {
      Found one = name.isEmpty() ? null : find(name, recipes);
      if (one != null && found.stream().noneMatch(other -> other.asked().equals(one.asked()))) {
        found.add(one);
      } else if (one == null && !name.isEmpty()) {
        unknown.add(name);
      }
    }
    List<Found> shown = found.subList(0, Math.min(MOST, found.size()));
    List<Item> items = new ArrayList<>();
    List<LevelsPlot.Line> lines = new ArrayList<>();
    for (int i = 0; i < shown.size(); i++) {
      Found one = shown.get(i);
      HeardRecipe heard = listening.hear(one.recipe());
      Item item =
          new Item(
              String.valueOf((char) ('A' + i)),
              one.recipe().title(),
              one.detail(),
              one.address(),
              "/compare?of=" + asked(shown, i),
              LOOKS[i],
              heard.resolution().missing());
      items.add(item);
      int look = LOOKS[i];
      heard
          .sound()
          .map(Sound::struckOnce)
          .map(lone -> new LevelsPlot.Line(item.letter(), item.name(), look, listening.drawn(lone)))
          .ifPresent(lines::add);
    }
    LevelsPlot plot = new LevelsPlot("Shapes over each other", lines);
    return new Comparison(
        items,
        unknown,
        found.size() > MOST,
        shown.size() == 2 ? differences(shown.get(0).recipe(), shown.get(1).recipe()) : List.of(),
        lines.isEmpty() ? null : numbers(shown, listening, items),
        lines.isEmpty() ? "" : plot.figure(Format.WIDE),
        lines.isEmpty() ? null : plot.table(),
        asked(shown, -1));
  }

  private static @Nullable Found find(String name, RecipeStore recipes) {
    int at = name.lastIndexOf('@');
    if (at > 0 && name.substring(at + 1).matches("[0-9]{1,9}")) {
      int number = Integer.parseInt(name.substring(at + 1));
      Kept<Recipe> stored = recipes.find(name.substring(0, at)).orElse(null);
      return stored == null
          ? null
          : recipes
              .revision(stored.thing().id(), number)
              .map(
                  revision -> {
                    String slug = stored.thing().slug();
                    return new Found(
                        slug + "@" + number,
                        revision.thing(),
                        "revision " + number,
                        "/recipes/" + slug + "/history/" + number);
                  })
              .orElse(null);
    }
    return recipes
        .find(name)
        .or(() -> recipes.find(Slugs.of(name)))
        .map(Kept::thing)
        .map(recipe -> new Found(recipe.slug(), recipe, "", "/recipes/" + recipe.slug()))
        .orElse(null);
  }

  private static String asked(List<Found> shown, int without) {
    List<String> asked = new ArrayList<>();
    for (int i = 0; i < shown.size(); i++) {
      if (i != without) {
        asked.add(shown.get(i).asked());
      }
    }
    return String.join(",", asked);
  }

  private static List<Difference> differences(Recipe one, Recipe other) {
    return Differences.between(one, other).stream()
        .filter(difference -> !difference.pointer().equals("/slug"))
        .map(
            difference ->
                new Difference(
                    DifferenceWords.name(difference.pointer()),
                    DifferenceWords.value(difference.before()),
                    DifferenceWords.value(difference.after())))
        .toList();
  }

  /** The numbers of all that can be predicted, as they are struck: trains as trains. */
  private static DataTable numbers(List<Found> shown, Listening listening, List<Item> items) {
    List<String> header = new ArrayList<>(List.of("Number"));
    List<Metrics> columns = new ArrayList<>();
    for (int i = 0; i < shown.size(); i++) {
      Metrics metrics = listening.hear(shown.get(i).recipe()).metrics().orElse(null);
      if (metrics != null) {
        columns.add(metrics);
        header.add(items.get(i).name());
      }
    }
    List<List<String>> rows = new ArrayList<>();
    for (MetricWords words : MetricWords.all()) {
      Metric metric = words.metric();
      List<OptionalDouble> values = columns.stream().map(m -> m.get(metric)).toList();
      if (values.stream().anyMatch(OptionalDouble::isPresent)) {
        List<String> row = new ArrayList<>(List.of(words.name()));
        values.forEach(value -> row.add(Reading.of(metric, value)));
        rows.add(row);
      }
    }
    List<String> reach = new ArrayList<>(List.of("Reach"));
    columns.forEach(metrics -> reach.add(ReachWords.brief(metrics.reach())));
    rows.add(reach);
    return new DataTable("Numbers side by side", header, rows);
  }

  /** The title of the page. */
  public String title() {
    return items.isEmpty()
        ? "Compare recipes"
        : "Compare " + String.join(", ", items.stream().map(Item::title).distinct().toList());
  }

  /** Whether one more has a place. */
  public boolean hasRoom() {
    return items.size() < MOST;
  }
}
