package thudbook.pages.writing;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.changes.Kept;
import thudbook.changes.Revision;
import thudbook.documents.Documents;
import thudbook.documents.Merge;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.Notes;
import thudbook.pages.frame.PostedForm;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.web.ErrorKind;
import thudbook.web.Visitors;

/**
 * The pages on which recipes are written. All of them are whole without scripts: each button sends
 * the form, and the answer is the page again or, once it is saved, the recipe.
 */
public final class EditorRoutes {
  private final Layout layout;
  private final RecipeStore recipes;
  private final Editing editing;
  private final DraftRoutes drafts;

  public EditorRoutes(Layout layout, RecipeStore recipes, Editing editing, DraftRoutes drafts) {
    this.layout = layout;
    this.recipes = recipes;
    this.editing = editing;
    this.drafts = drafts;
  }

  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/recipes/new", this::write)
        .post("/recipes/new", this::create)
        .get("/recipes/{slug}/edit", this::edit)
        .post("/recipes/{slug}/edit", this::change)
        .post("/editor/form", this::form)
        .post("/editor/live", this::live)
        .post("/editor/notes", this::notes);
    drafts.addTo(config);
  }

  private void write(Context context) {
    PostedForm form =
        drafts.form(context.queryParam("draft"), null).orElseGet(() -> begun(context));
    show(context, form, List.of(), Set.of());
  }

  private PostedForm begun(Context context) {
    String parent = context.queryParam("from");
    return parent == null
        ? editing.empty(Visitors.of(context).author())
        : editing.variation(stored(parent));
  }

  private void create(Context context) {
    PostedForm form = PostedForm.of(context);
    try {
      context.redirect(
          "/recipes/" + editing.create(form, Visitors.of(context).author()), HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      refused(context, form, refusal);
    }
  }

  private void edit(Context context) {
    Kept<Recipe> stored = stored(context.pathParam("slug"));
    PostedForm form =
        drafts
            .form(context.queryParam("draft"), stored.thing().id())
            .orElseGet(() -> editing.of(stored));
    show(context, form, List.of(), Set.of());
  }

  private void change(Context context) {
    Kept<Recipe> stored = stored(context.pathParam("slug"));
    PostedForm form =
        PostedForm.of(context).with(Map.of("form.subject", stored.thing().id().toString()));
    try {
      Merge conflict = editing.change(form, stored, Visitors.of(context).author()).orElse(null);
      if (conflict == null) {
        Kept<Recipe> saved = stored(stored.thing().id().toString());
        context.redirect("/recipes/" + saved.thing().slug(), HttpStatus.SEE_OTHER);
      } else {
        Revision<Recipe> last = recipes.revisions(stored.thing().id(), 0, 1).get(0);
        conflict(context, ConflictSheet.ofRecipe(form, stored, last, conflict));
      }
    } catch (Refusal refusal) {
      if (refusal.kind() == Refusal.Kind.STALE) {
        // Somebody saved between our look and our save: look again.
        change(context);
      } else {
        refused(context, form, refusal);
      }
    }
  }

  private void conflict(Context context, ConflictSheet sheet) {
    context.status(HttpStatus.CONFLICT);
    layout.show(
        context, "writing/conflict", sheet.title(), Frame.Section.RECIPES, Map.of("sheet", sheet));
  }

  /** The same page again, with a row more or less, or with everything that is wrong. */
  private void form(Context context) {
    PostedForm form = PostedForm.of(context);
    String add = form.own("add");
    String[] remove = form.own("remove").split("\\.", 2);
    Kept<Recipe> subject = editing.subject(form);
    if (!form.own("combine").isEmpty() && subject != null) {
      show(context, editing.combined(form, subject), List.of(), Set.of());
    } else if (!form.own("step-with").isEmpty()) {
      try {
        show(
            context,
            editing.inStep(form, form.own("step-with").equals("knobs")),
            List.of(),
            Set.of("settings"));
      } catch (Refusal refusal) {
        refused(context, form, refusal);
      }
    } else if (!add.isEmpty()) {
      String column = add.equals("stages") ? "gate" : EditorBuilder.firstColumn(add);
      PostedForm longer = form.with(Map.of(add + "." + form.rows(add) + "." + column, ""));
      show(context, longer, List.of(), Set.of(add));
    } else if (remove.length == 2 && remove[1].matches("[0-9]{1,3}")) {
      PostedForm shorter = form.withoutRow(remove[0], Integer.parseInt(remove[1]));
      show(context, shorter, List.of(), Set.of(remove[0]));
    } else {
      show(context, form, editing.answer(form).faults(), Set.of());
    }
  }

  private void live(Context context) {
    EditorAnswer answer = editing.answer(PostedForm.of(context));
    context
        .header("Cache-Control", "no-store")
        .html(layout.part("writing/answer", Map.of("answer", answer)));
  }

  private void notes(Context context) {
    context
        .header("Cache-Control", "no-store")
        .html(Notes.html(PostedForm.of(context).text("notes")));
  }

  private void refused(Context context, PostedForm form, Refusal refusal) {
    context.status(ErrorKind.of(refusal.kind()).status());
    show(context, form, EditorFault.of(refusal.faults(), form.fields().keySet()), Set.of());
  }

  private void show(
      Context context, PostedForm form, List<EditorFault> faults, Set<String> opened) {
    UUID subject = form.subject();
    Author author = Visitors.of(context).author();
    EditorSheet sheet =
        editing.sheet(
            form,
            faults,
            opened,
            others(form, drafts.unfinished(Documents.RECIPE.word(), subject, author)),
            author);
    layout.show(
        context, "writing/editor", sheet.heading(), Frame.Section.RECIPES, Map.of("sheet", sheet));
  }

  /** The drafts that are not shown on this very page. */
  private static List<EditorSheet.DraftLine> others(
      PostedForm form, List<EditorSheet.DraftLine> drafts) {
    return drafts.stream().filter(draft -> !draft.key().equals(form.own("key"))).toList();
  }

  private Kept<Recipe> stored(@Nullable String name) {
    return recipes
        .find(name == null ? "" : name)
        .orElseThrow(
            () ->
                Refusal.of(
                    Refusal.Kind.NOT_FOUND,
                    "not-found",
                    "The notebook has no recipe of this name."));
  }
}
