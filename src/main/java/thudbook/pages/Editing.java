package thudbook.pages;

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
import thudbook.access.Revision;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Differences;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.Merge;
import thudbook.documents.NewIdentity;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;
import thudbook.equipment.ModuleStore;
import thudbook.equipment.StudioChannel;
import thudbook.library.Library;
import thudbook.pages.EditorField.Option;
import thudbook.quantities.Refusal;
import thudbook.recipes.DialledSettings;
import thudbook.recipes.DraftStore;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Recipes;
import thudbook.recipes.StageEntry;

/** Makes forms of recipes, recipes of forms, and the pages around them. */
final class Editing {
  private final RecipeStore recipes;
  private final GateStore gates;
  private final ModuleStore modules;
  private final Library library;
  private final Recipes acts;
  private final DraftStore drafts;
  private final Supplier<UUID> ids;

  private final Identity identity;
  private final EarlierShapes shapes = new EarlierShapes();

  Editing(
      RecipeStore recipes,
      GateStore gates,
      ModuleStore modules,
      Library library,
      Recipes acts,
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
  PostedForm empty() {
    Map<String, String> fields = new LinkedHashMap<>(noted(ids.get()));
    StageEntry last = Suggestions.of(library, recipes).last();
    if (last != null) {
      fields.put("stages.0.gate", Objects.requireNonNullElse(last.gate(), ""));
      fields.put("stages.0.channel", Objects.requireNonNullElse(last.channel(), ""));
    }
    fields.put("envelope.kind", "attack-hold-decay");
    return new PostedForm(Map.of()).with(fields);
  }

  /** The form of a new recipe that varies another one. */
  PostedForm variation(RecipeStore.Stored parent) {
    Map<String, List<String>> fields = new LinkedHashMap<>(Documents.form(parent.recipe()));
    fields.remove("slug");
    Map<String, String> own = new LinkedHashMap<>(noted(ids.get()));
    own.put("derivedFrom", parent.recipe().slug());
    return new PostedForm(fields).with(own);
  }

  private static Map<String, String> noted(UUID id) {
    return Map.of("id", id.toString(), "form.key", id.toString(), "form.step", "0");
  }

  /** The form of a recipe that is there. */
  PostedForm of(RecipeStore.Stored stored) {
    return new PostedForm(Documents.form(stored.recipe()))
        .with(noted(stored))
        .with(Map.of("form.key", ids.get().toString(), "form.step", "0"));
  }

  private static Map<String, String> noted(RecipeStore.Stored stored) {
    return Map.of(
        "form.subject", stored.recipe().id().toString(),
        "form.version", String.valueOf(stored.version()),
        "form.revision", String.valueOf(stored.revision()));
  }

  /** The recipe that a form changes; null: it makes a new one. */
  RecipeStore.@Nullable Stored subject(PostedForm form) {
    UUID subject = form.subject();
    return subject == null ? null : recipes.find(subject.toString()).orElse(null);
  }

  /** The notebook's answer to a form. */
  EditorAnswer answer(PostedForm form) {
    return EditorAnswer.of(form, gates, modules.rack(), earlier(form));
  }

  /**
   * The form after its knobs and its sound were brought into step.
   *
   * @param values whether positions set values; otherwise values set positions
   * @throws Refusal with everything that is wrong with the form
   */
  PostedForm inStep(PostedForm form, boolean values) {
    Recipe recipe = Documents.recipeFromForm(form.recipe(), identity);
    DialledSettings settings = DialledSettings.of(recipe, modules.rack());
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
    RecipeStore.Stored subject = subject(form);
    if (subject != null) {
      return new EditorAnswer.Earlier("as it is saved", subject.recipe(), shapes);
    }
    String parent = form.text("derivedFrom").strip();
    return parent.isEmpty()
        ? null
        : recipes
            .find(parent)
            .map(RecipeStore.Stored::recipe)
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
      List<EditorSheet.DraftLine> unfinished) {
    RecipeStore.Stored subject = subject(form);
    EditorBuilder builder = new EditorBuilder(form, faults, gateOptions(), channelOptions());
    Set<String> open = new HashSet<>(opened);
    open.addAll(builder.faultyParts());
    String address = subject == null ? "/recipes/new" : "/recipes/" + subject.recipe().slug();
    return new EditorSheet(
        subject == null ? "A new recipe" : "Editing " + subject.recipe().title(),
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
        Suggestions.of(library, recipes).words(),
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
        .map(GateStore.Stored::gate)
        .map(gate -> Option.of(gate.slug(), gate.title()))
        .toList();
  }

  private List<Option> channelOptions() {
    List<Option> options = new ArrayList<>();
    for (GateStore.Stored stored : gates.all()) {
      Gate gate = stored.gate();
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
  String create(PostedForm form) {
    Map<String, List<String>> fields = form.recipe();
    if (envelopeIsUntouched(form)) {
      fields.put("envelope.kind", List.of(""));
    }
    Recipe recipe = Documents.recipeFromForm(fields, identity);
    RecipeStore.Stored there = recipes.find(recipe.id().toString()).orElse(null);
    String document = Documents.write(recipe);
    if (there != null
        && there.document().equals(Documents.write(recipe.withSlug(there.recipe().slug())))) {
      // The same form was sent twice.
      return there.recipe().slug();
    }
    acts.create(
        new Recipes.Written(recipe, document), Author.OWNER, "wrote down " + recipe.title());
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
  Optional<Merge> change(PostedForm form, RecipeStore.Stored stored) {
    Recipe yours = changed(form, stored);
    long seen = form.number("version");
    Recipe recipe = yours;
    if (stored.version() != seen) {
      Merge merge = merge(form, stored, yours);
      boolean chosen = form.number("theirs") == stored.version();
      if (!chosen && !stored.recipe().equals(yours)) {
        return Optional.of(merge);
      }
      recipe = combined(form, merge);
    }
    acts.change(
        recipe.id(),
        stored.version(),
        new Recipes.Written(recipe, Documents.write(recipe)),
        Author.OWNER,
        DifferenceWords.summary(Differences.between(stored.recipe(), recipe)));
    forget(form);
    return Optional.empty();
  }

  /** The form that goes on from what was chosen of two versions. */
  PostedForm combined(PostedForm form, RecipeStore.Stored stored) {
    Recipe recipe = combined(form, merge(form, stored, changed(form, stored)));
    return new PostedForm(Documents.form(recipe))
        .with(noted(stored))
        .with(Map.of("form.key", form.own("key"), "form.step", form.own("step")));
  }

  private Merge merge(PostedForm form, RecipeStore.Stored stored, Recipe yours) {
    Recipe base =
        recipes
            .revision(
                stored.recipe().id(), (int) Math.min(form.number("revision"), Integer.MAX_VALUE))
            .map(Revision::noun)
            .orElse(stored.recipe());
    return Merge.of(base, stored.recipe(), yours);
  }

  private Recipe combined(PostedForm form, Merge merge) {
    return Documents.recipeFromForm(merge.combined(ConflictSheet.chosen(form)), identity);
  }

  /** The recipe that a form makes of what is there. */
  private Recipe changed(PostedForm form, RecipeStore.Stored stored) {
    Map<String, List<String>> fields = form.recipe();
    fields.put("id", List.of(stored.recipe().id().toString()));
    if (form.text("slug").isBlank()) {
      fields.put("slug", List.of(stored.recipe().slug()));
    }
    Recipe recipe = Documents.recipeFromForm(fields, identity);
    return recipe;
  }

  private void forget(PostedForm form) {
    UUID key = form.key();
    if (key != null) {
      drafts.drop(key);
    }
  }
}
