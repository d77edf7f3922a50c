package thudbook.pages.finding;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Changes;
import thudbook.library.Counts;
import thudbook.library.Facet;
import thudbook.library.Library;
import thudbook.library.Tagging;
import thudbook.library.Words;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.pages.frame.BackAddress;
import thudbook.pages.frame.DoneNotice;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.quantities.Refusal;
import thudbook.web.ErrorKind;
import thudbook.web.Visitors;

/** All tags of the library: renaming, merging and deleting, each one act with undo. */
public final class TagRoutes {
  private final Layout layout;
  private final Library library;
  private final Tagging tagging;
  private final Changes changes;

  public TagRoutes(Layout layout, Stores stores, Acts acts) {
    this.layout = layout;
    this.library = stores.library();
    this.tagging = acts.tagging();
    this.changes = acts.changes();
  }

  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/tags", context -> show(context, null))
        .post("/tags/rename", this::rename)
        .post("/tags/delete", this::delete);
  }

  private void show(Context context, @Nullable TagQuestion question) {
    List<Counts.Value> tags = library.catalogue().mostUsed(Facet.TAG, Integer.MAX_VALUE);
    Map<String, Object> values = new HashMap<>(Map.of("tags", tags, "names", names(tags)));
    if (question != null) {
      values.put("question", question);
    }
    DoneNotice.of(context.queryParam(DoneNotice.PARAMETER), changes, "/tags")
        .ifPresent(done -> values.put("done", done));
    layout.show(context, "finding/tags", "Tags", Frame.Section.RECIPES, values);
  }

  private static List<String> names(List<Counts.Value> tags) {
    TreeSet<String> names = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
    tags.forEach(tag -> names.add(tag.label()));
    return List.copyOf(names);
  }

  private void rename(Context context) {
    String tag = Objects.requireNonNullElse(context.formParam("tag"), "");
    String name = Objects.requireNonNullElse(context.formParam("name"), "").strip();
    boolean another = !Words.fold(tag).equals(Words.fold(name));
    Counts.Value taken = another ? find(name) : null;
    if (taken != null && context.formParam("merge") == null) {
      context.status(HttpStatus.CONFLICT);
      show(context, new TagQuestion(tag, taken.label(), "", taken.recipes()));
      return;
    }
    try {
      done(context, tagging.rename(tag, name, Visitors.of(context).author()));
    } catch (Refusal refusal) {
      context.status(ErrorKind.of(refusal.kind()).status());
      show(context, new TagQuestion(tag, name, refusal.faults().get(0).message(), 0));
    }
  }

  private Counts.@Nullable Value find(String name) {
    String key = Words.fold(name);
    return library.catalogue().mostUsed(Facet.TAG, Integer.MAX_VALUE).stream()
        .filter(value -> value.key().equals(key))
        .findFirst()
        .orElse(null);
  }

  private void delete(Context context) {
    String tag = Objects.requireNonNullElse(context.formParam("tag"), "");
    done(context, tagging.delete(tag, Visitors.of(context).author()));
  }

  private static void done(Context context, OptionalLong change) {
    if (change.isPresent()) {
      BackAddress.lead(context, change.getAsLong());
    } else {
      context.redirect(BackAddress.of(context), HttpStatus.SEE_OTHER);
    }
  }
}
