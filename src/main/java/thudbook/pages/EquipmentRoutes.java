package thudbook.pages;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import thudbook.access.Author;
import thudbook.access.Revision;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Differences;
import thudbook.documents.Documents;
import thudbook.documents.NewIdentity;
import thudbook.documents.SameIdentity;
import thudbook.equipment.GateStore;
import thudbook.equipment.Module;
import thudbook.equipment.ModuleStore;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Modules;
import thudbook.web.ErrorKind;

/** The modules of the studio: the list, one to read, writing, history. */
public final class EquipmentRoutes {
  private static final String SAVED_SINCE =
      "Somebody saved it while you were looking. Look again before you go back.";

  private final Layout layout;
  private final ModuleStore modules;
  private final GateStore gates;
  private final Modules acts;
  private final NewIdentity identity;

  /**
   * Pages over these stores.
   *
   * @param ids gives new modules their ids
   */
  public EquipmentRoutes(Pages pages, Stores stores, Acts acts, Supplier<UUID> ids) {
    this.layout = pages.layout();
    this.modules = stores.modules();
    this.gates = stores.gates();
    this.acts = acts.modules();
    this.identity = new NewIdentity(ids, modules::slugTaken);
  }

  /** Adds all routes. */
  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/equipment", this::list)
        .get("/equipment/new", this::fresh)
        .post("/equipment/new", this::create)
        .get("/equipment/{slug}", this::module)
        .get("/equipment/{slug}/edit", this::edit)
        .post("/equipment/{slug}/edit", this::change)
        .post("/equipment/{slug}/bin", this::bin)
        .get("/equipment/{slug}/history", ctx -> showHistory(ctx, ""))
        .get("/equipment/{slug}/history/{number}", this::revision)
        .post("/equipment/{slug}/history/{number}/restore", this::restore)
        .post("/bin/modules/{id}", this::unbin);
  }

  private void list(Context ctx) {
    show(ctx, "equipment", "Equipment", Map.of("index", EquipmentIndex.of(modules)));
  }

  private void module(Context ctx) {
    ModuleStore.Stored stored = found(ctx);
    Module module = stored.module();
    if (!ctx.pathParam("slug").equals(module.slug())) {
      ctx.redirect("/equipment/" + module.slug(), HttpStatus.PERMANENT_REDIRECT);
      return;
    }
    show(
        ctx,
        "module",
        module.label() + " " + module.title(),
        Map.of("sheet", ModuleSheet.of(stored, gates)));
  }

  private void fresh(Context ctx) {
    Map<String, List<String>> fields = new LinkedHashMap<>();
    fields.put("controls.0.name", List.of(""));
    fields.put("ports.0.name", List.of(""));
    showForm(ctx, "/equipment/new", 0, fields, List.of());
  }

  private void create(Context ctx) {
    Map<String, List<String>> typed = typed(ctx);
    if (!saves(ctx)) {
      showForm(ctx, "/equipment/new", 0, typed, List.of());
      return;
    }
    try {
      Module module = Documents.moduleFromForm(ModuleForm.counting(typed), identity);
      acts.create(written(module), Author.OWNER, "wrote down the module " + module.label());
      ctx.redirect("/equipment/" + module.slug(), HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      ctx.status(ErrorKind.of(refusal.kind()).status());
      showForm(ctx, "/equipment/new", 0, typed, refusal.faults());
    }
  }

  private void edit(Context ctx) {
    ModuleStore.Stored stored = standing(ctx);
    showForm(ctx, address(stored), stored.version(), Documents.form(stored.module()), List.of());
  }

  private void change(Context ctx) {
    ModuleStore.Stored stored = standing(ctx);
    long version = Requested.version(ctx);
    Map<String, List<String>> typed = typed(ctx);
    if (!saves(ctx)) {
      showForm(ctx, address(stored), version, typed, List.of());
      return;
    }
    Module before = stored.module();
    try {
      Module module =
          Documents.moduleFromForm(
              ModuleForm.counting(typed), new SameIdentity(before.id(), before.slug()));
      if (version != stored.version()) {
        ctx.status(HttpStatus.PRECONDITION_FAILED);
        showForm(ctx, address(stored), stored.version(), typed, meanwhile(module, before));
        return;
      }
      String what =
          module.label() + ": " + DifferenceWords.summary(Differences.between(before, module));
      acts.change(before.id(), version, written(module), Author.OWNER, what);
      ctx.redirect("/equipment/" + module.slug(), HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      ctx.status(ErrorKind.of(refusal.kind()).status());
      showForm(ctx, address(stored), version, typed, refusal.faults());
    }
  }

  /** What saving would change of what somebody else saved in between. */
  private static List<Fault> meanwhile(Module typed, Module saved) {
    List<Fault> faults = new ArrayList<>();
    faults.add(
        plain(
            "Somebody saved this module while you were writing. Nothing is overwritten yet: saving"
                + " again makes these changes to what they saved."));
    DifferenceWords.sentences(saved, typed).forEach(sentence -> faults.add(plain(sentence)));
    return faults;
  }

  private static Fault plain(String message) {
    return new Fault("", 0, "stale", "", "", message);
  }

  private void bin(Context ctx) {
    long change = acts.bin(standing(ctx).module().id(), Requested.version(ctx), Author.OWNER);
    ctx.redirect("/changes/" + change, HttpStatus.SEE_OTHER);
  }

  private void unbin(Context ctx) {
    ctx.redirect("/changes/" + acts.unbin(Requested.id(ctx), Author.OWNER), HttpStatus.SEE_OTHER);
  }

  private void showHistory(Context ctx, String notice) {
    ModuleStore.Stored stored = found(ctx);
    int below = Requested.number(ctx, "below");
    HistorySheet sheet =
        HistorySheet.of(
            stored,
            modules.revisions(stored.module().id(), below, HistorySheet.ROWS + 1),
            below,
            notice);
    show(ctx, "history", "History of " + sheet.title(), Map.of("sheet", sheet));
  }

  private void revision(Context ctx) {
    ModuleStore.Stored stored = found(ctx);
    Revision<Module> revision =
        modules
            .revision(stored.module().id(), Requested.number(ctx))
            .orElseThrow(() -> Requested.notFound("There is no revision of this number."));
    RevisionBanner banner =
        RevisionBanner.of(
            revision,
            stored.revision(),
            "/equipment/" + stored.module().slug(),
            "",
            stored.binnedAt() == null ? stored.version() : 0);
    ModuleStore.Stored then =
        new ModuleStore.Stored(
            revision.noun(), stored.version(), revision.number(), null, revision.document());
    show(
        ctx,
        "module",
        revision.noun().label() + ", revision " + revision.number(),
        Map.of("sheet", ModuleSheet.of(then, gates), "banner", banner));
  }

  private void restore(Context ctx) {
    try {
      long change =
          acts.restore(
              found(ctx).module().id(),
              Requested.version(ctx),
              Requested.number(ctx),
              Author.OWNER,
              Documents::write);
      ctx.redirect("/changes/" + change, HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      if (refusal.kind() != Refusal.Kind.STALE) {
        throw refusal;
      }
      ctx.status(HttpStatus.PRECONDITION_FAILED);
      showHistory(ctx, SAVED_SINCE);
    }
  }

  private static Map<String, List<String>> typed(Context ctx) {
    Map<String, List<String>> fields = PostedForm.of(ctx).recipe();
    fields.remove("version");
    String deed = ctx.formParam("form.do");
    return ModuleForm.after(deed == null ? "" : deed, fields);
  }

  private static boolean saves(Context ctx) {
    return "save".equals(ctx.formParam("form.do"));
  }

  private static Modules.Written written(Module module) {
    return new Modules.Written(module, Documents.write(module));
  }

  private static String address(ModuleStore.Stored stored) {
    return "/equipment/" + stored.module().slug() + "/edit";
  }

  private void showForm(
      Context ctx,
      String address,
      long version,
      Map<String, List<String>> typed,
      List<Fault> faults) {
    List<String> slugs = gates.all().stream().map(stored -> stored.gate().slug()).toList();
    String title = version == 0 ? "Write a module down" : "Change a module";
    show(
        ctx,
        "module-form",
        title,
        Map.of("form", ModuleForm.of(address, version, typed, slugs, faults)));
  }

  private void show(Context ctx, String template, String title, Map<String, ?> values) {
    layout.show(ctx, template, title, Frame.Section.EQUIPMENT, values);
  }

  private ModuleStore.Stored found(Context ctx) {
    return modules
        .find(ctx.pathParam("slug"))
        .orElseThrow(() -> Requested.notFound("The studio has no module of this name."));
  }

  private ModuleStore.Stored standing(Context ctx) {
    ModuleStore.Stored stored = found(ctx);
    if (stored.binnedAt() != null) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT,
          "in-bin",
          stored.module().title() + " is in the bin: take it out first.");
    }
    return stored;
  }
}
