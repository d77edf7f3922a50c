package thudbook.pages.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.pages.frame.Notes;
import thudbook.predictions.Predictor;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Resolution;
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

  /** The page of a recipe; predicts it. */
  public static RecipeSheet of(Kept<Recipe> stored, RecipeStore recipes, Things<Gate> gates) {
    Recipe recipe = stored.thing();
    Resolution resolution = Resolution.of(recipe, gates);
    Outcome outcome =
        resolution
            .complete()
            .map(sound -> Outcome.of(sound, Predictor.predictWithCurve(sound)))
            .orElse(null);
    List<Block> played = played(recipe);
    List<StageView> stages =
        IntStream.range(0, recipe.stages().size())
            .mapToObj(i -> StageView.of(recipe.stages().get(i), i, gates))
            .toList();
    Map<String, Entry> values = byKey(played, stages);
    List<Cautions.Caution> cautions = new ArrayList<>();
    if (outcome != null) {
      cautions.addAll(outcome.cautions());
    }
    resolution.gates().stream().distinct().map(Cautions::of).forEach(cautions::addAll);
    return new RecipeSheet(
        recipe,
        facts(stored),
        recipe.derivedFrom() == null ? null : parent(recipe.derivedFrom(), recipes),
        recipe.source() == null ? "" : SourceWords.line(recipe.source()),
        played,
        stages,
        recipe.settings().stream().map(setting -> Knob.of(setting, values)).toList(),
        cautions,
        resolution.missing(),
        outcome,
        Notes.html(recipe.notes()),
        recipes.variations(recipe.id(), MOST_VARIATIONS),
        stored.version(),
        stored.binnedAt() != null);
  }

  /** How the sound goes on behind the gates: mixes with their levels, in words. */
  public List<Entry> onward() {
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

  private static List<Block> played(Recipe recipe) {
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
