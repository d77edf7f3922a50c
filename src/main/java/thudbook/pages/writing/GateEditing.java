package thudbook.pages.writing;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Revision;
import thudbook.changes.Store;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.Limits;
import thudbook.documents.Merge;
import thudbook.documents.NewIdentity;
import thudbook.equipment.Gate;
import thudbook.pages.frame.Notes;
import thudbook.pages.frame.PostedForm;
import thudbook.quantities.Refusal;
import thudbook.recipes.DraftStore;
import thudbook.recipes.RecipeStore;

/** Makes forms of gates, gates of forms, and the pages around them. */
public final class GateEditing {
  private final Store<Gate> gates;
  private final RecipeStore recipes;
  private final Keeper<Gate> acts;
  private final DraftStore drafts;
  private final Supplier<UUID> ids;

  private final Identity identity;

  public GateEditing(
      Store<Gate> gates,
      RecipeStore recipes,
      Keeper<Gate> acts,
      DraftStore drafts,
      Supplier<UUID> ids) {
    this.gates = gates;
    this.recipes = recipes;
    this.acts = acts;
    this.drafts = drafts;
    this.ids = ids;
    this.identity = new NewIdentity(ids, gates::slugTaken);
  }

  /** An empty form with one channel. */
  PostedForm empty() {
    UUID id = ids.get();
    return new PostedForm(Map.of())
        .with(
            Map.of(
                "id", id.toString(),
                "form.key", id.toString(),
                "form.step", "0",
                "form.noun", "gate",
                "channels.0.release.0.share", "1"));
  }

  /** The form of a gate that is there. */
  PostedForm of(Kept<Gate> stored) {
    Map<String, String> noted = new LinkedHashMap<>();
    noted.put("form.key", ids.get().toString());
    noted.put("form.step", "0");
    noted.putAll(noted(stored));
    for (int i = 0; i < stored.thing().channels().size(); i++) {
      noted.put("channels." + i + ".was", stored.thing().channels().get(i).channel().name());
    }
    return new PostedForm(Documents.form(stored.thing())).with(noted);
  }

  private static Map<String, String> noted(Kept<Gate> stored) {
    return Map.of(
        "form.noun", "gate",
        "form.subject", stored.thing().id().toString(),
        "form.version", String.valueOf(stored.version()),
        "form.revision", String.valueOf(stored.revision()));
  }

  /** The gate that a form changes; null: it makes a new one. */
  private @Nullable Kept<Gate> subject(PostedForm form) {
    UUID subject = form.subject();
    return subject == null ? null : gates.find(subject.toString()).orElse(null);
  }

  /** The notebook's answer to a form. */
  GateAnswer answer(PostedForm form) {
    return GateAnswer.of(form, identity, gates);
  }

  /** The page of a form. */
  GateEditorSheet sheet(
      PostedForm form,
      List<EditorFault> faults,
      GateEditorSheet.@Nullable Guard guard,
      List<EditorSheet.DraftLine> unfinished) {
    Kept<Gate> subject = subject(form);
    List<RecipeStore.Use> uses = subject == null ? List.of() : recipes.using(subject.thing().id());
    GateFormBuilder builder = new GateFormBuilder(form, faults, uses);
    String address = subject == null ? "/gates/new" : "/gates/" + subject.thing().slug();
    List<GateEditorSheet.Channel> channels = builder.channels();
    return new GateEditorSheet(
        subject == null ? "A new gate" : "Editing " + subject.thing().title(),
        subject == null ? address : address + "/edit",
        hidden(form),
        faults,
        guard,
        builder.field("title"),
        channels,
        channels.size() < Limits.CHANNELS,
        builder.field("caution"),
        builder.field("notes"),
        builder.field("slug"),
        Notes.html(form.text("notes")),
        unfinished,
        answer(form),
        subject == null ? "/gates" : address);
  }

  private static Map<String, String> hidden(PostedForm form) {
    Map<String, String> hidden = new LinkedHashMap<>();
    hidden.put("id", form.text("id"));
    for (String name : List.of("key", "step", "noun", "subject", "version", "revision")) {
      hidden.put("form." + name, form.own(name));
    }
    form.fields()
        .forEach(
            (name, values) -> {
              if (name.matches("channels\\.[0-9]+\\.was")) {
                hidden.put(name, values.get(0));
              }
            });
    hidden.values().removeIf(String::isEmpty);
    return hidden;
  }

  /**
   * What recipes would lose with a channel of the form.
   *
   * @return null: nothing
   */
  GateEditorSheet.@Nullable Guard guard(PostedForm form, int channel) {
    Kept<Gate> subject = subject(form);
    String was = form.text("channels." + channel + ".was");
    if (subject == null || was.isEmpty()) {
      return null;
    }
    List<GateEditorSheet.Guard.Line> lines =
        recipes.using(subject.thing().id()).stream()
            .filter(use -> use.channels().contains(was))
            .map(use -> new GateEditorSheet.Guard.Line(use.title(), "/recipes/" + use.slug()))
            .toList();
    return lines.isEmpty()
        ? null
        : new GateEditorSheet.Guard("The channel " + was + " is in use", lines);
  }

  /** What stands in the way of a save, as it was refused. */
  static GateEditorSheet.@Nullable Guard guard(Refusal refusal) {
    List<GateEditorSheet.Guard.Line> lines =
        refusal.faults().stream()
            .filter(fault -> fault.code().equals("in-use"))
            .map(
                fault ->
                    new GateEditorSheet.Guard.Line(fault.message(), "/recipes/" + fault.found()))
            .toList();
    return lines.isEmpty()
        ? null
        : new GateEditorSheet.Guard("What recipes use has to stay", lines);
  }

  /**
   * Writes a new gate down and forgets its draft.
   *
   * @return the address that shows it
   * @throws Refusal with everything that is wrong
   */
  String create(PostedForm form, Author author) {
    Gate gate = Documents.GATE.fromForm(form.gate(), identity);
    Kept<Gate> there = gates.find(gate.id().toString()).orElse(null);
    if (there != null
        && there.document().equals(Documents.write(gate.withSlug(there.thing().slug())))) {
      // The same form was sent twice.
      return "/gates/" + there.thing().slug();
    }
    acts.create(gate, author, "wrote down the gate " + gate.title());
    forget(form);
    return "/gates/" + gate.slug();
  }

  /**
   * What there is to choose before a form can be saved, because somebody saved meanwhile.
   *
   * @return empty: nothing, or it was chosen
   * @throws Refusal with everything that is wrong with the form
   */
  Optional<Merge> conflict(PostedForm form, Kept<Gate> stored) {
    boolean chosen = form.number("theirs") == stored.version();
    if (stored.version() == form.number("version") || chosen) {
      return Optional.empty();
    }
    Gate yours = gate(form, stored);
    return stored.thing().equals(yours)
        ? Optional.empty()
        : Optional.of(merge(form, stored, yours));
  }

  /**
   * Saves a change and forgets its draft.
   *
   * @return the address that shows what came of it: the change if recipes follow from it
   * @throws Refusal with everything that is wrong; of kind STALE if somebody saved meanwhile
   */
  String change(PostedForm form, Kept<Gate> stored, Author author) {
    Gate gate = gate(form, stored);
    if (stored.version() != form.number("version")) {
      gate = combined(form, merge(form, stored, gate));
    }
    boolean same = Documents.write(gate).equals(stored.document());
    long change =
        acts.change(gate.id(), stored.version(), gate, author, words(stored.thing(), gate));
    forget(form);
    return same || recipes.using(gate.id()).isEmpty()
        ? "/gates/" + gate.slug()
        : "/changes/" + change;
  }

  /** The form that goes on from what was chosen of two versions. */
  PostedForm combined(PostedForm form, Kept<Gate> stored) {
    Gate gate = combined(form, merge(form, stored, gate(form, stored)));
    Map<String, String> noted = new LinkedHashMap<>(noted(stored));
    noted.put("form.key", form.own("key"));
    noted.put("form.step", form.own("step"));
    for (int i = 0; i < gate.channels().size(); i++) {
      String name = gate.channels().get(i).channel().name();
      if (stored.thing().channels().stream().anyMatch(c -> c.channel().name().equals(name))) {
        noted.put("channels." + i + ".was", name);
      }
    }
    return new PostedForm(Documents.form(gate)).with(noted);
  }

  private Merge merge(PostedForm form, Kept<Gate> stored, Gate yours) {
    Gate base =
        gates
            .revision(
                stored.thing().id(), (int) Math.min(form.number("revision"), Integer.MAX_VALUE))
            .map(Revision::thing)
            .orElse(stored.thing());
    return Merge.of(base, stored.thing(), yours);
  }

  private Gate combined(PostedForm form, Merge merge) {
    return Documents.GATE.fromForm(merge.combined(ConflictSheet.chosen(form)), identity);
  }

  private Gate gate(PostedForm form, Kept<Gate> stored) {
    Map<String, List<String>> fields = form.gate();
    fields.put("id", List.of(stored.thing().id().toString()));
    if (form.text("slug").isBlank()) {
      fields.put("slug", List.of(stored.thing().slug()));
    }
    Gate gate = Documents.GATE.fromForm(fields, identity);
    return gate;
  }

  private static String words(Gate before, Gate after) {
    return after.title() + ": " + DifferenceWords.summary(before, after);
  }

  private void forget(PostedForm form) {
    UUID key = form.key();
    if (key != null) {
      drafts.drop(key);
    }
  }
}
