package thudbook.pages.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.pages.frame.Notes;
import thudbook.plots.ShapePlot;
import thudbook.recipes.HeardRecipe;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.StageEntry;
import thudbook.wording.Cautions;
import thudbook.wording.Entry;
import thudbook.wording.EnvelopeWords;
import thudbook.wording.Reading;
import thudbook.wording.SourceWords;

/**
 * A recipe as a page to read.
 *
 * @param facts who made it and when, as far as it is written
 * @param derivedFrom the recipe that this one varies; null: none
 * @param source what sounds, in one line; empty: not yet
 * @param played every value of source, envelope, strikes and output, in tables
 * @param missing what keeps it from being predicted; empty where there is an outcome
 * @param outcome what will be heard; null: not complete
 * @param notes safe HTML
 * @param variations the recipes that vary this one
 * @param version what an act on it has to name
 * @param binned whether it is in the bin
 */
public record RecipeSheet(
    Recipe recipe,
    List<Entry> facts,
    @Nullable Parent derivedFrom,
    String source,
    List<Block> played,
    List<StageView> stages,
    List<Knob> knobs,
    List<Cautions.Caution> cautions,
    List<String> missing,
    @Nullable Outcome outcome,
    String notes,
    List<RecipeStore.Variation> variations,
    long version,
    boolean binned) {
  /** So many variations are listed. */
  private static final int MOST_VARIATIONS = 100;

  /**
   * The recipe that another one varies.
   *
   * @param slug null: the notebook does not have it
   */
  public record Parent(String title, @Nullable String slug) {
    /** Where it is; null: nowhere. */
    public @Nullable String address() {
      return slug == null ? null : "/recipes/" + slug;
    }
  }

  /** A table of values. */
  public record Block(String title, List<Entry> entries) {}

  /**
   * What other recipes have to do with one.
   *
   * @param derivedFrom the one that it varies; null: none
   * @param variations those that vary it
   */
  public record Relatives(@Nullable Parent derivedFrom, List<RecipeStore.Variation> variations) {
    public static Relatives of(Recipe recipe, RecipeStore recipes) {
      return new Relatives(
          recipe.derivedFrom() == null ? null : parent(recipe.derivedFrom(), recipes),
          recipes.variations(recipe.id(), MOST_VARIATIONS));
    }
  }

  /** The page of a recipe. */
  public static RecipeSheet of(Kept<Recipe> stored, HeardRecipe heard, Relatives relatives) {
    Recipe recipe = heard.recipe();
    Outcome outcome =
        heard
            .sound()
            .map(sound -> Outcome.of(sound, heard.listening(), null, ShapePlot.ON_A_PAGE))
            .orElse(null);
    List<Block> played = played(recipe);
    List<StageView> stages = stages(heard);
    return new RecipeSheet(
        recipe,
        facts(stored),
        relatives.derivedFrom(),
        recipe.source() == null ? "" : SourceWords.line(recipe.source()),
        played,
        stages,
        knobs(recipe, played, stages),
        cautions(heard),
        heard.resolution().missing(),
        outcome,
        Notes.html(recipe.notes()),
        relatives.variations(),
        stored.version(),
        stored.binnedAt() != null);
  }

  /** The knobs of a recipe in words, each with the value that it sets. */
  public static List<Knob> knobs(HeardRecipe heard) {
    return knobs(heard.recipe(), played(heard.recipe()), stages(heard));
  }

  private static List<Knob> knobs(Recipe recipe, List<Block> played, List<StageView> stages) {
    Map<String, Entry> values = byKey(played, stages);
    return recipe.settings().stream().map(setting -> Knob.of(setting, values)).toList();
  }

  private static List<StageView> stages(HeardRecipe heard) {
    List<StageEntry> stages = heard.recipe().stages();
    return IntStream.range(0, stages.size())
        .mapToObj(i -> StageView.of(stages.get(i), i, heard.listening().studio()))
        .toList();
  }

  /** What its sound and its gates have to be handled with care for. */
  public static List<Cautions.Caution> cautions(HeardRecipe heard) {
    List<Cautions.Caution> cautions = new ArrayList<>();
    heard.metrics().map(Cautions::of).ifPresent(cautions::addAll);
    heard.resolution().gates().stream().distinct().map(Cautions::of).forEach(cautions::addAll);
    return cautions;
  }

  /** How the sound goes on behind the gates: mixes with their levels, in words. */
  public List<Entry> onward() {
    return onward(recipe);
  }

  /** How the sound of a recipe goes on behind the gates. */
  public static List<Entry> onward(Recipe recipe) {
    List<Entry> onward = new ArrayList<>();
    for (Recipe.After after : recipe.after()) {
      onward.add(new Entry("", after.what(), after.how() == null ? "" : after.how()));
    }
    for (Recipe.Mix mix : recipe.mix()) {
      onward.add(
          new Entry(
              "",
              "Into " + mix.into(),
              mix.levelDb() == null ? "" : Reading.entered(mix.levelDb(), "dB")));
    }
    return onward;
  }

  private static List<Entry> facts(Kept<Recipe> stored) {
    Recipe recipe = stored.thing();
    List<Entry> facts = new ArrayList<>();
    if (recipe.by() != null) {
      facts.add(new Entry("", "By", recipe.by()));
    }
    if (!recipe.with().isEmpty()) {
      facts.add(new Entry("", "With", String.join(", ", recipe.with())));
    }
    if (recipe.made() != null) {
      facts.add(new Entry("", "Made", Reading.day(recipe.made())));
    }
    if (recipe.rating() != null) {
      facts.add(new Entry("", "Rating", recipe.rating() + " of 5"));
    }
    if (recipe.room() != null) {
      facts.add(new Entry("", "Room", recipe.room()));
    }
    facts.add(
        new Entry(
            "",
            "Written down",
            Reading.day(stored.origin().changedAt()) + ", by " + stored.origin().author().name()));
    return facts;
  }

  /** The recipe that a slug or an id leads to. */
  public static Parent parent(String name, RecipeStore recipes) {
    return recipes
        .find(name)
        .map(p -> new Parent(p.thing().title(), p.thing().slug()))
        .orElse(new Parent(name, null));
  }

  /** Every value of source, envelope, strikes and output, in tables. */
  public static List<Block> played(Recipe recipe) {
    List<Block> blocks = new ArrayList<>();
    if (recipe.source() != null) {
      blocks.add(new Block("Source", SourceWords.entries(recipe.source())));
    }
    if (recipe.envelope() != null) {
      blocks.add(new Block("Envelope", EnvelopeWords.entries(recipe.envelope(), "envelope.")));
    }
    if (recipe.strikes() != null) {
      blocks.add(new Block("Strikes", EnvelopeWords.entries(recipe.strikes())));
    }
    if (recipe.couplingHertz() != null) {
      blocks.add(
          new Block(
              "Output",
              List.of(
                  new Entry(
                      "output.coupling",
                      "Coupling high-pass",
                      recipe.couplingHertz() == 0
                          ? "none"
                          : Reading.enteredHertz(recipe.couplingHertz())))));
    }
    return blocks;
  }

  private static Map<String, Entry> byKey(List<Block> played, List<StageView> stages) {
    Map<String, Entry> values = new HashMap<>();
    played.forEach(block -> block.entries().forEach(e -> values.put(e.key(), e)));
    for (StageView stage : stages) {
      stage.drive().forEach(e -> values.put(e.key(), e));
      stage.envelope().forEach(e -> values.put(e.key(), e));
    }
    return values;
  }
}
