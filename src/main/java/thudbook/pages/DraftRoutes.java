package thudbook.pages;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.quantities.Refusal;
import thudbook.recipes.Act;
import thudbook.recipes.DraftStore;
import thudbook.recipes.DraftStore.Draft;
import thudbook.recipes.RecipeStore;

/** Keeps what is typed into forms, and offers it again. */
final class DraftRoutes {
  private static final int SHOWN = 20;
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("d MMMM yyyy, HH:mm 'UTC'", Locale.ENGLISH);
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final TypeReference<LinkedHashMap<String, List<String>>> FIELDS =
      new TypeReference<>() {};

  private final DraftStore drafts;
  private final RecipeStore recipes;
  private final InstantSource clock;

  DraftRoutes(DraftStore drafts, RecipeStore recipes, InstantSource clock) {
    this.drafts = drafts;
    this.recipes = recipes;
    this.clock = clock;
  }

  void addTo(JavalinConfig config) {
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
            Act.Noun.RECIPE,
            subject,
            subject == null ? null : form.number("version"),
            Author.OWNER,
            clock.instant(),
            form.number("step"),
            json(form)));
    context.status(HttpStatus.NO_CONTENT);
  }

  private void drop(Context context) {
    drafts.drop(key(context));
    String subject = PostedForm.of(context).own("subject");
    Optional<RecipeStore.Stored> recipe =
        subject.isEmpty() ? Optional.empty() : recipes.find(subject);
    context.redirect(
        recipe.map(r -> "/recipes/" + r.recipe().slug() + "/edit").orElse("/recipes/new"),
        HttpStatus.SEE_OTHER);
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

  /** What was begun: of one recipe, or, for null, of all of them and of new ones. */
  List<EditorSheet.DraftLine> unfinished(@Nullable UUID subject) {
    return drafts.unfinished(Author.OWNER, SHOWN).stream()
        .filter(draft -> draft.noun() == Act.Noun.RECIPE)
        .filter(draft -> subject == null || subject.equals(draft.subject()))
        .map(this::line)
        .toList();
  }

  private EditorSheet.DraftLine line(Draft draft) {
    String title = form(draft).text("title");
    String subject = draft.subject() == null ? "" : draft.subject().toString();
    String page =
        recipes
            .find(subject.isEmpty() ? "-" : subject)
            .map(stored -> "/recipes/" + stored.recipe().slug() + "/edit")
            .orElse("/recipes/new");
    return new EditorSheet.DraftLine(
        draft.key().toString(),
        title.isBlank() ? "Without a title" : title,
        subject,
        TIME.format(draft.keptAt().atOffset(ZoneOffset.UTC)),
        draft.keptAt().toString(),
        page + "?draft=" + draft.key());
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
