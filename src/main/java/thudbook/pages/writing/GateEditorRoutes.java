package thudbook.pages.writing;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Kept;
import thudbook.changes.Revision;
import thudbook.changes.Store;
import thudbook.documents.Documents;
import thudbook.documents.Limits;
import thudbook.documents.Merge;
import thudbook.equipment.Gate;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.PostedForm;
import thudbook.pages.frame.Requested;
import thudbook.quantities.Refusal;
import thudbook.web.ErrorKind;
import thudbook.web.Visitors;

/**
 * The pages on which gates are written, whole without scripts: each button sends the form, and the
 * answer is the page again or, once it is saved, what came of it.
 */
public final class GateEditorRoutes {
  private final Layout layout;
  private final Store<Gate> gates;
  private final GateEditing editing;
  private final DraftRoutes drafts;

  public GateEditorRoutes(
      Layout layout, Store<Gate> gates, GateEditing editing, DraftRoutes drafts) {
    this.layout = layout;
    this.gates = gates;
    this.editing = editing;
    this.drafts = drafts;
  }

  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/gates/new", this::write)
        .post("/gates/new", this::create)
        .get("/gates/{slug}/edit", this::edit)
        .post("/gates/{slug}/edit", this::change)
        .post("/editor/gate/form", this::form)
        .post("/editor/gate/live", this::live);
  }

  private void write(Context context) {
    show(
        context,
        drafts.form(context.queryParam("draft"), null).orElseGet(editing::empty),
        List.of());
  }

  private void create(Context context) {
    PostedForm form = PostedForm.of(context);
    try {
      context.redirect(editing.create(form, Visitors.of(context).author()), HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      refused(context, form, refusal);
    }
  }

  private void edit(Context context) {
    Kept<Gate> stored = Requested.gate(context, gates);
    show(
        context,
        drafts
            .form(context.queryParam("draft"), stored.thing().id())
            .orElseGet(() -> editing.of(stored)),
        List.of());
  }

  private void change(Context context) {
    Kept<Gate> stored = Requested.gate(context, gates);
    PostedForm form =
        PostedForm.of(context).with(Map.of("form.subject", stored.thing().id().toString()));
    try {
      Merge conflict = editing.conflict(form, stored).orElse(null);
      if (conflict == null) {
        context.redirect(
            editing.change(form, stored, Visitors.of(context).author()), HttpStatus.SEE_OTHER);
      } else {
        Revision<Gate> last = gates.revisions(stored.thing().id(), 0, 1).get(0);
        ConflictSheet sheet = ConflictSheet.ofGate(form, stored, last, conflict);
        context.status(HttpStatus.CONFLICT);
        layout.show(
            context,
            "writing/conflict",
            sheet.title(),
            Frame.Section.GATES,
            Map.of("sheet", sheet));
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

  private void refused(Context context, PostedForm form, Refusal refusal) {
    context.status(ErrorKind.of(refusal.kind()).status());
    GateEditorSheet.Guard guard = GateEditing.guard(refusal);
    show(
        context,
        form,
        guard == null ? EditorFault.of(refusal.faults(), form.fields().keySet()) : List.of(),
        guard);
  }

  /** The same page again, with a channel more or less, or with everything that is wrong. */
  private void form(Context context) {
    PostedForm form = PostedForm.of(context);
    int channels = Math.max(1, form.rows("channels"));
    String[] remove = form.own("remove").split("\\.", 2);
    UUID subject = form.subject();
    Kept<Gate> combining =
        form.own("combine").isEmpty() || subject == null
            ? null
            : gates.find(subject.toString()).orElse(null);
    if (combining != null) {
      show(context, editing.combined(form, combining), List.of());
    } else if (!form.own("add").isEmpty()) {
      String added = "channels." + channels + ".";
      show(
          context,
          channels < Limits.CHANNELS
              ? form.with(Map.of(added + "name", "", added + "release.0.share", "1"))
              : form,
          List.of());
    } else if (remove.length == 2 && remove[1].matches("[0-9]{1,3}")) {
      int index = Integer.parseInt(remove[1]);
      GateEditorSheet.Guard guard = editing.guard(form, index);
      if (guard != null) {
        context.status(HttpStatus.CONFLICT);
      }
      show(context, guard == null ? form.withoutRow("channels", index) : form, List.of(), guard);
    } else {
      show(context, form, editing.answer(form).faults());
    }
  }

  private void live(Context context) {
    GateAnswer answer = editing.answer(PostedForm.of(context));
    context
        .header("Cache-Control", "no-store")
        .html(layout.part("writing/gate-answer", Map.of("answer", answer)));
  }

  private void show(Context context, PostedForm form, List<EditorFault> faults) {
    show(context, form, faults, null);
  }

  private void show(
      Context context,
      PostedForm form,
      List<EditorFault> faults,
      GateEditorSheet.@Nullable Guard guard) {
    List<EditorSheet.DraftLine> others =
        drafts
            .unfinished(Documents.GATE.word(), form.subject(), Visitors.of(context).author())
            .stream()
            .filter(draft -> !draft.key().equals(form.own("key")))
            .toList();
    GateEditorSheet sheet = editing.sheet(form, faults, guard, others);
    layout.show(
        context,
        "writing/gate-editor",
        sheet.heading(),
        Frame.Section.GATES,
        Map.of("sheet", sheet));
  }
}
