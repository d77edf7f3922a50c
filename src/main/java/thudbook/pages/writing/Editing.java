package thudbook.pages.writing;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Revision;
import thudbook.changes.Store;
import thudbook.changes.Things;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Differences;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.Merge;
import thudbook.documents.NewIdentity;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.equipment.Rack;
import thudbook.equipment.StudioChannel;
import thudbook.library.Library;
import thudbook.pages.frame.Notes;
import thudbook.pages.frame.PostedForm;
import thudbook.pages.reading.RecipeSheet;
import thudbook.pages.writing.EditorField.Option;
import thudbook.patching.DialledSettings;
import thudbook.quantities.Refusal;
import thudbook.recipes.DraftStore;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.StageEntry;

/** Makes forms of recipes, recipes of forms, and the pages around them. */
public final class Editing {
  private final RecipeStore recipes;
  private final Things<Gate> gates;
  private final Store<Module> modules;
  private final Library library;
  private final Keeper<Recipe> acts;
  private final DraftStore drafts;
  private final Supplier<UUID> ids;

  private final Identity identity;
  private final EarlierShapes shapes = new EarlierShapes();

  public Editing(
      RecipeStore recipes,
      Things<Gate> gates,
      Store<Module> modules,
      Library library,
      Keeper<Recipe> acts,
      DraftStore drafts,
      Supplier<UUID> ids) {
    this.recipes = recipes;
    this.gates = gates;
    this.modules = modules;
    this.library = library;
    this.acts = acts;
    this.drafts = drafts;
    this.ids = ids;
    this.identity = new NewIdentity(ids, recipes::slugTaken);
  }

  /** An empty form, with the gate that was used last. */
  PostedForm empty(Author author) {
    Map<String, String> fields = new LinkedHashMap<>(noted(ids.get()));
    StageEntry last = Suggestions.of(library, recipes, author).last();
    if (last != null) {
      fields.put("stages.0.gate", Objects.requireNonNullElse(last.gate(), ""));
      fields.put("stages.0.channel", Objects.requireNonNullElse(last.channel(), ""));
    }
    fields.put("envelope.kind", "attack-hold-decay");
    return new PostedForm(Map.of()).with(fields);
  }

  /** The form of a new recipe that varies another one. */
  PostedForm variation(Kept<Recipe> parent) {
    Map<String, List<String>> fields = new LinkedHashMap<>(Documents.form(parent.thing()));
    fields.remove("slug");
    Map<String, String> own = new LinkedHashMap<>(noted(ids.get()));
    own.put("derivedFrom", parent.thing().slug());
    return new PostedForm(fields).with(own);
  }

  private static Map<String, String> noted(UUID id) {
    return Map.of("id", id.toString(), "form.key", id.toString(), "form.step", "0");
  }

  /** The form of a recipe that is there. */
  PostedForm of(Kept<Recipe> stored) {
    return new PostedForm(Documents.form(stored.thing()))
        .with(noted(stored))
        .with(Map.of("form.key", ids.get().toString(), "form.step", "0"));
  }

  private static Map<String, String> noted(Kept<Recipe> stored) {
    return Map.of(
        "form.subject", stored.thing().id().toString(),
        "form.version", String.valueOf(stored.version()),
        "form.revision", String.valueOf(stored.revision()));
  }

  /** The recipe that a form changes; null: it makes a new one. */
  @Nullable Kept<Recipe> subject(PostedForm form) {
    UUID subject = form.subject();
    return subject == null ? null : recipes.find(subject.toString()).orElse(null);
  }

  /** The notebook's answer to a form. */
  EditorAnswer answer(PostedForm form) {
    return EditorAnswer.of(form, gates, Rack.of(modules), earlier(form));
  }

  /**
   * The form after its knobs and its sound were brought into step.
   *
   * @param values whether positions set values; otherwise values set positions
   * @throws Refusal with everything that is wrong with the form
   */
  PostedForm inStep(PostedForm form, boolean values) {
    Recipe recipe = Documents.RECIPE.fromForm(form.recipe(), identity);
    DialledSettings settings = DialledSettings.of(recipe, Rack.of(modules));
    Map<String, String> texts = new LinkedHashMap<>();
    Documents.form(values ? settings.asRead() : settings.asSounding())
        .forEach((name, text) -> texts.put(name, text.get(0)));
    // A new recipe keeps its blank address until it is saved.
    if (form.text("slug").isBlank()) {
      texts.remove("slug");
    }
    return form.with(texts);
  }

  private EditorAnswer.@Nullable Earlier earlier(PostedForm form) {
    Kept<Recipe> subject = subject(form);
    if (subject != null) {
      return new EditorAnswer.Earlier("as it is saved", subject.thing(), shapes);
    }
    String parent = form.text("derivedFrom").strip();
    return parent.isEmpty()
        ? null
        : recipes
            .find(parent)
            .map(Kept::thing)
            .map(recipe -> new EditorAnswer.Earlier("in " + recipe.title(), recipe, shapes))
            .orElse(null);
  }

  /**
   * The page of a form.
   *
   * @param faults what is wrong with it
   * @param opened parts that are to be open at first
   */
  EditorSheet sheet(
      PostedForm form,
      List<EditorFault> faults,
      Set<String> opened,
      List<EditorSheet.DraftLine> unfinished,
      Author author) {
    Kept<Recipe> subject = subject(form);
    EditorBuilder builder = new EditorBuilder(form, faults, gateOptions(), channelOptions());
    Set<String> open = new HashSet<>(opened);
    open.addAll(builder.faultyParts());
    String address = subject == null ? "/recipes/new" : "/recipes/" + subject.thing().slug();
    return new EditorSheet(
        subject == null ? "A new recipe" : "Editing " + subject.thing().title(),
        subject == null ? address : address + "/edit",
        hidden(form),
        parent(form),
        faults,
        builder.parts(),
        open,
        builder.source(),
        builder.envelope(),
        builder.strikes(),
        builder.stages(),
        builder.rows(),
        Notes.html(form.text("notes")),
        Suggestions.of(library, recipes, author).words(),
        unfinished,
        answer(form),
        subject == null ? "/" : address);
  }

  /** What the page carries along without showing it. */
  private static Map<String, String> hidden(PostedForm form) {
    Map<String, String> hidden = new LinkedHashMap<>();
    hidden.put("id", form.text("id"));
    for (String name : List.of("key", "step", "subject", "version", "revision")) {
      hidden.put("form." + name, form.own(name));
    }
    form.fields()
        .forEach(
            (name, values) -> {
              if (name.matches("photos\\.[0-9]+\\.file")) {
                hidden.put(name, values.get(0));
              }
            });
    hidden.values().removeIf(String::isEmpty);
    return hidden;
  }

  private RecipeSheet.@Nullable Parent parent(PostedForm form) {
    String name = form.text("derivedFrom").strip();
    return name.isEmpty() ? null : RecipeSheet.parent(name, recipes);
  }

  private List<Option> gateOptions() {
    return gates.all().stream()
        .map(Kept::thing)
        .map(gate -> Option.of(gate.slug(), gate.title()))
        .toList();
  }

  private List<Option> channelOptions() {
    List<Option> options = new ArrayList<>();
    for (Kept<Gate> stored : gates.all()) {
      Gate gate = stored.thing();
      for (StudioChannel channel : gate.channels()) {
        String name = channel.channel().name();
        options.add(new Option(name, name, gate.slug()));
      }
    }
    return options;
  }

  /**
   * Writes a new recipe down and forgets its draft.
   *
   * @return its slug
   * @throws Refusal with everything that is wrong
   */
  String create(PostedForm form, Author author) {
    Map<String, List<String>> fields = form.recipe();
    if (envelopeIsUntouched(form)) {
      fields.put("envelope.kind", List.of(""));
    }
    Recipe recipe = Documents.RECIPE.fromForm(fields, identity);
    Kept<Recipe> there = recipes.find(recipe.id().toString()).orElse(null);
    if (there != null
        && there.document().equals(Documents.write(recipe.withSlug(there.thing().slug())))) {
      // The same form was sent twice.
      return there.thing().slug();
    }
    acts.create(recipe, author, "wrote down " + recipe.title());
    forget(form);
    return recipe.slug();
  }

  /** Whether only the kind is set, which an empty form does by itself. */
  private static boolean envelopeIsUntouched(PostedForm form) {
    String struck = "attack-hold-decay";
    return form.text("envelope.kind").equals(struck)
        && List.of("peak", "attack", "hold", "decay").stream()
            .allMatch(key -> form.text("envelope." + struck + "." + key).isBlank());
  }

  /**
   * Saves a change and forgets its draft. Where somebody saved meanwhile and nothing was chosen
   * yet, nothing is saved.
   *
   * @return what there is to choose; empty: it is saved
   * @throws Refusal with everything that is wrong
   */
  Optional<Merge> change(PostedForm form, Kept<Recipe> stored, Author author) {
    Recipe yours = changed(form, stored);
    long seen = form.number("version");
    Recipe recipe = yours;
    if (stored.version() != seen) {
      Merge merge = merge(form, stored, yours);
      boolean chosen = form.number("theirs") == stored.version();
      if (!chosen && !stored.thing().equals(yours)) {
        return Optional.of(merge);
      }
      recipe = combined(form, merge);
    }
    acts.change(
        recipe.id(),
        stored.version(),
        recipe,
        author,
        DifferenceWords.summary(Differences.between(stored.thing(), recipe)));
    forget(form);
    return Optional.empty();
  }

  /** The form that goes on from what was chosen of two versions. */
  PostedForm combined(PostedForm form, Kept<Recipe> stored) {
    Recipe recipe = combined(form, merge(form, stored, changed(form, stored)));
    return new PostedForm(Documents.form(recipe))
        .with(noted(stored))
        .with(Map.of("form.key", form.own("key"), "form.step", form.own("step")));
  }

  private Merge merge(PostedForm form, Kept<Recipe> stored, Recipe yours) {
    Recipe base =
        recipes
            .revision(
                stored.thing().id(), (int) Math.min(form.number("revision"), Integer.MAX_VALUE))
            .map(Revision::thing)
            .orElse(stored.thing());
    return Merge.of(base, stored.thing(), yours);
  }

  private Recipe combined(PostedForm form, Merge merge) {
    return Documents.RECIPE.fromForm(merge.combined(ConflictSheet.chosen(form)), identity);
  }

  /** The recipe that a form makes of what is there. */
  private Recipe changed(PostedForm form, Kept<Recipe> stored) {
    Map<String, List<String>> fields = form.recipe();
    fields.put("id", List.of(stored.thing().id().toString()));
    if (form.text("slug").isBlank()) {
      fields.put("slug", List.of(stored.thing().slug()));
    }
    Recipe recipe = Documents.RECIPE.fromForm(fields, identity);
    return recipe;
  }

  private void forget(PostedForm form) {
    UUID key = form.key();
    if (key != null) {
      drafts.drop(key);
    }
  }
}
