package thudbook.pages.rack;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import thudbook.changes.Keeper;
import thudbook.changes.Kept;
import thudbook.changes.Store;
import thudbook.changes.Things;
import thudbook.documents.DifferenceWords;
import thudbook.documents.Differences;
import thudbook.documents.Documents;
import thudbook.documents.NewIdentity;
import thudbook.documents.SameIdentity;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.PostedForm;
import thudbook.pages.frame.Requested;
import thudbook.pages.frame.RevisionBanner;
import thudbook.pages.history.HistoryRoutes;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.web.ErrorKind;
import thudbook.web.Visitors;

/** The modules of the studio: the list, one to read, writing, history. */
public final class EquipmentRoutes {
  private final Layout layout;
  private final Store<Module> modules;
  private final Things<Gate> gates;
  private final Keeper<Module> acts;
  private final NewIdentity identity;
  private final HistoryRoutes<Module> history;

  /**
   * Pages over these stores.
   *
   * @param ids gives new modules their ids
   */
  public EquipmentRoutes(Layout layout, Stores stores, Acts acts, Supplier<UUID> ids) {
    this.layout = layout;
    this.modules = stores.modules();
    this.gates = stores.gates();
    this.acts = acts.modules();
    this.identity = new NewIdentity(ids, modules::slugTaken);
    this.history =
        new HistoryRoutes<>(
            layout,
            Documents.MODULE,
            this.acts,
            new HistoryRoutes.Subject<>(
                "/equipment/",
                Frame.Section.EQUIPMENT,
                module -> module.label() + " " + module.title(),
                this::earlier));
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
        .post("/equipment/{slug}/bin", this::bin);
    history.addTo(config);
  }

  private void list(Context ctx) {
    show(ctx, "rack/equipment", "Equipment", Map.of("index", EquipmentIndex.of(modules)));
  }

  private void module(Context ctx) {
    Kept<Module> stored = found(ctx);
    Module module = stored.thing();
    if (!ctx.pathParam("slug").equals(module.slug())) {
      ctx.redirect("/equipment/" + module.slug(), HttpStatus.PERMANENT_REDIRECT);
      return;
    }
    show(
        ctx,
        "rack/module",
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
      Module module = Documents.MODULE.fromForm(ModuleForm.counting(typed), identity);
      acts.create(module, Visitors.of(ctx).author(), "wrote down the module " + module.label());
      ctx.redirect("/equipment/" + module.slug(), HttpStatus.SEE_OTHER);
    } catch (Refusal refusal) {
      ctx.status(ErrorKind.of(refusal.kind()).status());
      showForm(ctx, "/equipment/new", 0, typed, refusal.faults());
    }
  }

  private void edit(Context ctx) {
    Kept<Module> stored = standing(ctx);
    showForm(ctx, address(stored), stored.version(), Documents.form(stored.thing()), List.of());
  }

  private void change(Context ctx) {
    Kept<Module> stored = standing(ctx);
    long version = Requested.version(ctx);
    Map<String, List<String>> typed = typed(ctx);
    if (!saves(ctx)) {
      showForm(ctx, address(stored), version, typed, List.of());
      return;
    }
    Module before = stored.thing();
    try {
      Module module =
          Documents.MODULE.fromForm(
              ModuleForm.counting(typed), new SameIdentity(before.id(), before.slug()));
      if (version != stored.version()) {
        ctx.status(HttpStatus.PRECONDITION_FAILED);
        showForm(ctx, address(stored), stored.version(), typed, meanwhile(module, before));
        return;
      }
      String what =
          module.label() + ": " + DifferenceWords.summary(Differences.between(before, module));
      acts.change(before.id(), version, module, Visitors.of(ctx).author(), what);
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
    long change =
        acts.bin(standing(ctx).thing().id(), Requested.version(ctx), Visitors.of(ctx).author());
    ctx.redirect("/changes/" + change, HttpStatus.SEE_OTHER);
  }

  private void earlier(Context ctx, Kept<Module> then, RevisionBanner banner) {
    show(
        ctx,
        "rack/module",
        then.thing().label() + ", revision " + then.revision(),
        Map.of("sheet", ModuleSheet.of(then, gates), "banner", banner));
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

  private static String address(Kept<Module> stored) {
    return "/equipment/" + stored.thing().slug() + "/edit";
  }

  private void showForm(
      Context ctx,
      String address,
      long version,
      Map<String, List<String>> typed,
      List<Fault> faults) {
    List<String> slugs = gates.all().stream().map(stored -> stored.thing().slug()).toList();
    String title = version == 0 ? "Write a module down" : "Change a module";
    show(
        ctx,
        "rack/module-form",
        title,
        Map.of("form", ModuleForm.of(address, version, typed, slugs, faults)));
  }

  private void show(Context ctx, String template, String title, Map<String, ?> values) {
    layout.show(ctx, template, title, Frame.Section.EQUIPMENT, values);
  }

  private Kept<Module> found(Context ctx) {
    return modules
        .find(ctx.pathParam("slug"))
        .orElseThrow(() -> Requested.notFound("The studio has no module of this name."));
  }

  private Kept<Module> standing(Context ctx) {
    Kept<Module> stored = found(ctx);
    if (stored.binnedAt() != null) {
      throw Refusal.of(
          Refusal.Kind.CONFLICT,
          "in-bin",
          stored.thing().title() + " is in the bin: take it out first.");
    }
    return stored;
  }
}
