package thudbook.pages.writing;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.changes.Things;
import thudbook.documents.Documents;
import thudbook.equipment.Gate;
import thudbook.pages.frame.PostedForm;
import thudbook.quantities.Refusal;
import thudbook.recipes.DraftStore;
import thudbook.recipes.DraftStore.Draft;
import thudbook.recipes.RecipeStore;
import thudbook.web.Visitors;
import thudbook.wording.TimeOfRecord;

/** Keeps what is typed into forms, and offers it again. */
public final class DraftRoutes {
  private static final int SHOWN = 20;
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final TypeReference<LinkedHashMap<String, List<String>>> FIELDS =
      new TypeReference<>() {};

  private final DraftStore drafts;
  private final RecipeStore recipes;
  private final Things<Gate> gates;
  private final InstantSource clock;

  public DraftRoutes(
      DraftStore drafts, RecipeStore recipes, Things<Gate> gates, InstantSource clock) {
    this.drafts = drafts;
    this.recipes = recipes;
    this.gates = gates;
    this.clock = clock;
  }

  public void addTo(JavalinConfig config) {
    config
        .routes
        .post("/editor/drafts/{key}", this::keep)
        .post("/editor/drafts/{key}/drop", this::drop);
  }

  private void keep(Context context) {
    PostedForm form = PostedForm.of(context);
    UUID subject = form.subject();
    drafts.keep(
        new Draft(
            key(context),
            noun(form),
            subject,
            subject == null ? null : Math.max(1, form.number("version")),
            Visitors.of(context).author(),
            clock.instant(),
            form.number("step"),
            json(form)));
    context.status(HttpStatus.NO_CONTENT);
  }

  private void drop(Context context) {
    drafts.drop(key(context));
    PostedForm form = PostedForm.of(context);
    context.redirect(page(noun(form), form.own("subject")), HttpStatus.SEE_OTHER);
  }

  private static String noun(PostedForm form) {
    return form.own("noun").equals("gate") ? Documents.GATE.word() : Documents.RECIPE.word();
  }

  /** Where something is written: what is there, or something new. */
  private String page(String noun, String subject) {
    String name = subject.isEmpty() ? "-" : subject;
    return noun.equals(Documents.GATE.word())
        ? gates
            .find(name)
            .map(stored -> "/gates/" + stored.thing().slug() + "/edit")
            .orElse("/gates/new")
        : recipes
            .find(name)
            .map(stored -> "/recipes/" + stored.thing().slug() + "/edit")
            .orElse("/recipes/new");
  }

  private static UUID key(Context context) {
    UUID key = PostedForm.uuid(context.pathParam("key"));
    if (key == null) {
      throw Refusal.of(Refusal.Kind.NOT_FOUND, "not-found", "There is no such draft.");
    }
    return key;
  }

  /** The form of a draft that was begun from the same recipe; empty: it is gone. */
  Optional<PostedForm> form(@Nullable String key, @Nullable UUID subject) {
    UUID name = key == null ? null : PostedForm.uuid(key);
    return name == null
        ? Optional.empty()
        : drafts
            .find(name)
            .filter(draft -> java.util.Objects.equals(draft.subject(), subject))
            .map(DraftRoutes::form);
  }

  /** What was begun: of one recipe or gate, or, for null, of all of them and of new ones. */
  List<EditorSheet.DraftLine> unfinished(String noun, @Nullable UUID subject, Author author) {
    return drafts.unfinished(author, SHOWN).stream()
        .filter(draft -> draft.noun().equals(noun))
        .filter(draft -> subject == null || subject.equals(draft.subject()))
        .map(this::line)
        .toList();
  }

  private EditorSheet.DraftLine line(Draft draft) {
    String title = form(draft).text("title");
    String subject = draft.subject() == null ? "" : draft.subject().toString();
    return new EditorSheet.DraftLine(
        draft.key().toString(),
        title.isBlank() ? "Without a title" : title,
        subject,
        TimeOfRecord.of(draft.keptAt()).words(),
        draft.keptAt().toString(),
        page(draft.noun(), subject) + "?draft=" + draft.key());
  }

  private static PostedForm form(Draft draft) {
    try {
      return new PostedForm(JSON.readValue(draft.form(), FIELDS))
          .with(
              java.util.Map.of(
                  "form.key", draft.key().toString(), "form.step", String.valueOf(draft.step())));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a draft that can't be read: " + draft.key(), e);
    }
  }

  private static String json(PostedForm form) {
    try {
      return JSON.writeValueAsString(form.fields());
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }
}
