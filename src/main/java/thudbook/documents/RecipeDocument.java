package thudbook.documents;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Dates;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Texts;
import thudbook.documents.tree.Tree;
import thudbook.documents.tree.Values;
import thudbook.envelopes.Strikes;
import thudbook.quantities.Dimension;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;
import thudbook.recipes.StageEntry;

/** A recipe document. */
final class RecipeDocument extends NounDocument<Recipe> {
  static final RecipeDocument NOUN = new RecipeDocument();

  private RecipeDocument() {
    super(Recipe.class, "recipe");
  }

  @Override
  String notes(Recipe recipe) {
    return recipe.notes();
  }

  @Override
  public Recipe withSlug(Recipe recipe, String slug) {
    return recipe.withSlug(slug);
  }

  /** Whether both sound alike, so that the prediction of one is that of the other. */
  @Override
  public boolean followsAlike(Recipe before, Recipe after) {
    return before.soundsAs(after);
  }

  @Override
  Map<String, List<String>> kept(Map<String, List<String>> form, Faults faults) {
    return FormReading.kept(form, faults);
  }

  @Override
  DifferenceWords words(Recipe before, Recipe after) {
    return DifferenceWords.of(before, after);
  }

  @Override
  @Nullable Recipe read(Fields fields, String notes, Identity identity, Faults faults) {
    int before = faults.count();
    UUID id = Names.id(fields, faults);
    String slug = Names.slug(fields, faults);
    String title = fields.needLine("title", Limits.TITLE);
    List<String> tags = tags(fields, faults);
    String by = fields.line("by", Limits.NAME);
    Tree made = fields.get("made");
    LocalDate date = made == null ? null : Dates.read(made, faults);
    String parent = Names.reference(fields, "derivedFrom", "the slug or id of a recipe", faults);
    String heard = fields.line("heard", Limits.SENTENCE);
    Integer rating = fields.whole("rating", 1, 5);
    Tree source = fields.get("source");
    SourceEntry sourceEntry = source == null ? null : SourcePart.read(source, faults);
    EnvelopeEntry envelope = StagePart.envelope(fields, faults);
    Tree strikes = fields.get("strikes");
    Strikes struck = strikes == null ? null : StrikesPart.read(strikes, faults);
    List<StageEntry> stages = new ArrayList<>();
    for (Tree stage : fields.items("stages", Limits.STAGES)) {
      stages.add(StagePart.read(stage, faults));
    }
    if (struck != null) {
      refuseStruckRecording(fields, envelope, stages, faults);
    }
    Double coupling = coupling(fields, faults);
    List<Recipe.Connection> connections = PatchPart.connections(fields, faults);
    List<Recipe.Setting> settings = PatchPart.settings(fields, faults);
    List<Recipe.Mix> mix = PatchPart.mix(fields, faults);
    List<Recipe.After> after = PatchPart.after(fields, faults);
    List<Recipe.Photo> photos = PatchPart.photos(fields, faults);
    String room = fields.line("room", Limits.SENTENCE);
    List<String> with = lines(fields, "with", Limits.ROWS, Limits.NAME, faults);
    fields.done();
    if (title == null || faults.count() > before) {
      return null;
    }
    return new Recipe(
        id == null ? identity.newId() : id,
        slug == null ? identity.slugFor(title) : slug,
        title,
        tags,
        by,
        date,
        parent,
        heard,
        rating,
        sourceEntry,
        envelope,
        struck,
        stages,
        coupling,
        connections,
        settings,
        mix,
        after,
        photos,
        room,
        with,
        notes);
  }

  private static List<String> tags(Fields fields, Faults faults) {
    List<String> tags = lines(fields, "tags", Limits.TAGS, Limits.TAG, faults);
    Set<String> seen = new HashSet<>();
    for (String tag : tags) {
      if (!seen.add(Texts.folded(tag))) {
        faults.add(fields.placeOf("tags"), "twice", tag + " twice", "each tag once");
      }
    }
    return tags;
  }

  /** A list of words; blank ones are as good as not written. */
  static List<String> lines(Fields fields, String key, int most, int longest, Faults faults) {
    List<String> lines = new ArrayList<>();
    for (Tree item : fields.items(key, most)) {
      String line = Values.line(item, longest, faults);
      if (line != null) {
        lines.add(line);
      }
    }
    return lines;
  }

  /** The coupling of {@code output}, if it is there. */
  static @Nullable Double coupling(Fields fields, Faults faults) {
    Tree tree = fields.get("output");
    if (tree == null) {
      return null;
    }
    Fields output = Fields.of(tree, faults);
    Double coupling = output.quantity("coupling", Limits.COUPLING);
    output.done();
    return coupling;
  }

  static void refuseStruckRecording(
      Fields fields, @Nullable EnvelopeEntry envelope, List<StageEntry> stages, Faults faults) {
    boolean recorded =
        stages.isEmpty()
            ? envelope instanceof EnvelopeEntry.Recorded
            : stages.stream()
                .map(stage -> stage.envelope() == null ? envelope : stage.envelope())
                .anyMatch(EnvelopeEntry.Recorded.class::isInstance);
    if (recorded) {
      faults.say(
          fields.placeOf("strikes"),
          "recorded-struck",
          "strikes",
          "no strikes",
          "a recorded control voltage can't be struck again, leave strikes out");
    }
  }

  @Override
  Draft.Mapping write(Recipe recipe, Draft.@Nullable Keys notes) {
    SourceEntry source = recipe.source();
    EnvelopeEntry envelope = recipe.envelope();
    Strikes strikes = recipe.strikes();
    LocalDate made = recipe.made();
    Double coupling = recipe.couplingHertz();
    Draft.Keys keys =
        Draft.keys()
            .token("thudbook", format())
            .token("id", recipe.id().toString())
            .words("slug", recipe.slug())
            .words("title", recipe.title())
            .put("tags", words(recipe.tags()))
            .words("by", recipe.by())
            .words("made", made == null ? null : made.toString())
            .words("derivedFrom", recipe.derivedFrom())
            .words("heard", recipe.heard())
            .whole("rating", recipe.rating())
            .put("source", source == null ? null : SourcePart.write(source))
            .put("envelope", envelope == null ? null : EnvelopePart.write(envelope))
            .put("strikes", strikes == null ? null : StrikesPart.write(strikes))
            .put(
                "stages",
                recipe.stages().isEmpty()
                    ? null
                    : Draft.lines(recipe.stages().stream().map(StagePart::write).toList()))
            .put(
                "output",
                coupling == null
                    ? null
                    : Draft.keys().quantity("coupling", coupling, Dimension.FREQUENCY).inline())
            .all(PatchPart.write(recipe))
            .words("room", recipe.room())
            .put("with", words(recipe.with()));
    return (notes == null ? keys : keys.all(notes)).lines();
  }

  private static @Nullable Draft words(List<String> words) {
    return words.isEmpty() ? null : Draft.inline(words.stream().map(Draft.Words::new).toList());
  }
}
