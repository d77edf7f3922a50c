package thudbook.documents;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import thudbook.equipment.Gate;
import thudbook.equipment.GateStore;
import thudbook.equipment.Module;
import thudbook.predictions.Sound;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.sessions.Session;

/** Reads and writes the documents of the notebook, as text and as JSON. */
public final class Documents {
  private static final String FORMATS =
      Choice.expected(
          List.of(
              RecipeDocument.FORMAT,
              GateDocument.FORMAT,
              ModuleDocument.FORMAT,
              SessionDocument.FORMAT));

  private Documents() {}

  /** What a document turned out to be. */
  public sealed interface Noun {
    /** What it is called: {@code recipe}; its plural is a folder and a part of addresses. */
    String word();

    UUID id();

    String slug();

    String title();

    /** Its canonical text. */
    String text();
  }

  /** A recipe. */
  public record ARecipe(Recipe recipe) implements Noun {
    @Override
    public String word() {
      return "recipe";
    }

    @Override
    public UUID id() {
      return recipe.id();
    }

    @Override
    public String slug() {
      return recipe.slug();
    }

    @Override
    public String title() {
      return recipe.title();
    }

    @Override
    public String text() {
      return write(recipe);
    }
  }

  /** A gate. */
  public record AGate(Gate gate) implements Noun {
    @Override
    public String word() {
      return "gate";
    }

    @Override
    public UUID id() {
      return gate.id();
    }

    @Override
    public String slug() {
      return gate.slug();
    }

    @Override
    public String title() {
      return gate.title();
    }

    @Override
    public String text() {
      return write(gate);
    }
  }

  /** A session. */
  public record ASession(Session session) implements Noun {
    @Override
    public String word() {
      return "session";
    }

    @Override
    public UUID id() {
      return session.id();
    }

    @Override
    public String slug() {
      return session.slug();
    }

    @Override
    public String title() {
      return session.title();
    }

    @Override
    public String text() {
      return write(session);
    }
  }

  /** A module. */
  public record AModule(Module module) implements Noun {
    @Override
    public String word() {
      return "module";
    }

    @Override
    public UUID id() {
      return module.id();
    }

    @Override
    public String slug() {
      return module.slug();
    }

    @Override
    public String title() {
      return module.title();
    }

    @Override
    public String text() {
      return write(module);
    }
  }

  /**
   * A document that was read.
   *
   * @param notes what a reader should be told, such as "2 comments were dropped"
   */
  public record Read(Noun noun, List<String> notes) {
    public Read {
      notes = List.copyOf(notes);
    }
  }

  /**
   * Reads a document of any noun.
   *
   * @param bytes UTF-8 text
   * @param identity gives an id and a slug to a document without them
   * @throws thudbook.quantities.Refusal with all faults of the document
   */
  public static Read read(byte[] bytes, Identity identity) {
    FrontMatter parts = FrontMatter.of(bytes);
    YamlTree.Parsed parsed = YamlTree.read(parts.yaml(), FrontMatter.FIRST_LINE);
    Faults faults = new Faults();
    Fields fields = Fields.of(parsed.tree(), faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    String format = Names.format(fields, FORMATS, faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    Objects.requireNonNull(format);
    String text = Notes.checked(parts.notes(), new Place(parts.notesLine(), "/notes"), faults);
    Noun noun =
        switch (format) {
          case RecipeDocument.FORMAT -> recipe(fields, text, identity, faults);
          case GateDocument.FORMAT -> gate(fields, text, identity, faults);
          case ModuleDocument.FORMAT -> module(fields, text, identity, faults);
          case SessionDocument.FORMAT -> session(fields, text, identity, faults);
          default -> throw new IllegalStateException("a format without a reader: " + format);
        };
    List<String> notes = new ArrayList<>(faults.notes());
    if (parsed.comments() > 0) {
      notes.add(
          parsed.comments() == 1
              ? "1 comment was dropped"
              : parsed.comments() + " comments were dropped");
    }
    return new Read(noun, notes);
  }

  /** The canonical text of a recipe: two recipes are the same if and only if theirs are equal. */
  public static String write(Recipe recipe) {
    return document(RecipeDocument.write(recipe, null), recipe.notes());
  }

  /** The canonical text of a gate: two gates are the same if and only if theirs are equal. */
  public static String write(Gate gate) {
    return document(GateDocument.write(gate, null), gate.notes());
  }

  /** The canonical text of a session: two sessions are the same if and only if theirs are equal. */
  public static String write(Session session) {
    return document(SessionDocument.write(session, null), session.notes());
  }

  /** The canonical text of a module: two modules are the same if and only if theirs are equal. */
  public static String write(Module module) {
    return document(ModuleDocument.write(module, null), module.notes());
  }

  private static String document(Draft.Mapping frontMatter, String notes) {
    String text = Notes.kept(notes);
    String fence = FrontMatter.FENCE + "\n";
    return fence + YamlPrint.of(frontMatter) + fence + text + (text.isEmpty() ? "" : "\n");
  }

  /** A recipe as JSON: the documents' keys with plain SI numbers, and {@code notes}. */
  public static String json(Recipe recipe) {
    return JsonPrint.of(RecipeDocument.write(recipe, Notes.key(recipe.notes())));
  }

  /** A gate as JSON: the documents' keys with plain SI numbers, and {@code notes}. */
  public static String json(Gate gate) {
    return JsonPrint.of(GateDocument.write(gate, Notes.key(gate.notes())));
  }

  /** A session as JSON: the documents' keys, and {@code notes}. */
  public static String json(Session session) {
    return JsonPrint.of(SessionDocument.write(session, Notes.key(session.notes())));
  }

  /** A module as JSON: the documents' keys with plain SI numbers, and {@code notes}. */
  public static String json(Module module) {
    return JsonPrint.of(ModuleDocument.write(module, Notes.key(module.notes())));
  }

  /**
   * Reads a recipe from JSON. The key {@code thudbook} may be absent.
   *
   * @throws thudbook.quantities.Refusal with all faults of it
   */
  public static Recipe recipeFromJson(byte[] json, Identity identity) {
    Faults faults = new Faults();
    Fields fields = fieldsOfJson(json, RecipeDocument.FORMAT, faults);
    String notes = Notes.read(fields, faults);
    Recipe recipe = recipe(fields, notes, identity, faults).recipe();
    refuseTooLong(write(recipe));
    return recipe;
  }

  /**
   * Reads a gate from JSON. The key {@code thudbook} may be absent.
   *
   * @throws thudbook.quantities.Refusal with all faults of it
   */
  public static Gate gateFromJson(byte[] json, Identity identity) {
    Faults faults = new Faults();
    Fields fields = fieldsOfJson(json, GateDocument.FORMAT, faults);
    String notes = Notes.read(fields, faults);
    Gate gate = gate(fields, notes, identity, faults).gate();
    refuseTooLong(write(gate));
    return gate;
  }

  /**
   * Reads a session from JSON. The key {@code thudbook} may be absent.
   *
   * @throws thudbook.quantities.Refusal with all faults of it
   */
  public static Session sessionFromJson(byte[] json, Identity identity) {
    Faults faults = new Faults();
    Fields fields = fieldsOfJson(json, SessionDocument.FORMAT, faults);
    String notes = Notes.read(fields, faults);
    Session session = session(fields, notes, identity, faults).session();
    refuseTooLong(write(session));
    return session;
  }

  /**
   * Reads a session from the fields of a form, such as {@code recipes.0.note}. {@link
   * #form(Session)} gives the fields of a session.
   *
   * @throws thudbook.quantities.Refusal with all faults of it; their places lead to fields
   */
  public static Session sessionFromForm(Map<String, List<String>> form, Identity identity) {
    Session session = FormReading.session(form, identity);
    refuseTooLong(write(session));
    return session;
  }

  /** A session as the fields of a form, in the order of its document. */
  public static Map<String, List<String>> form(Session session) {
    return FormPrint.of(SessionDocument.write(session, Notes.key(session.notes())));
  }

  /**
   * Reads a module from JSON. The key {@code thudbook} may be absent.
   *
   * @throws thudbook.quantities.Refusal with all faults of it
   */
  public static Module moduleFromJson(byte[] json, Identity identity) {
    Faults faults = new Faults();
    Fields fields = fieldsOfJson(json, ModuleDocument.FORMAT, faults);
    String notes = Notes.read(fields, faults);
    Module module = module(fields, notes, identity, faults).module();
    refuseTooLong(write(module));
    return module;
  }

  /**
   * Reads the body of a prediction: {@code {source, envelope, strikes?, stages, output?}}, stages
   * with gate and channel or with an inline channel. The envelope may be absent if every stage has
   * its own.
   *
   * @throws thudbook.quantities.Refusal with all faults of it
   */
  public static Sound soundFromJson(byte[] json, GateStore gates) {
    return new PredictionBody(gates).read(JsonTree.read(json));
  }

  /**
   * Reads a recipe from the fields of a form: names are pointers with dots, such as {@code
   * stages.0.gain}, and where a block has kinds the form keeps the fields of each, {@code
   * source.fm.carrier}. Blank values are not written. {@link #form(Recipe)} gives the fields of a
   * recipe.
   *
   * @throws thudbook.quantities.Refusal with all faults of it; their places lead to fields. A
   *     channel that is only tried out is one of them: a recipe that is kept names gates.
   */
  public static Recipe recipeFromForm(Map<String, List<String>> form, Identity identity) {
    Recipe recipe = FormReading.recipe(form, identity);
    refuseTooLong(write(recipe));
    return recipe;
  }

  /**
   * Reads from the fields of a form what the sound follows from, with channels that are only tried
   * out; the words of the patch may be missing or wrong.
   *
   * @throws thudbook.quantities.Refusal with all faults of the sound
   */
  public static Experiment experimentFromForm(Map<String, List<String>> form) {
    return FormReading.experiment(form);
  }

  /** A recipe as the fields of a form, in the order of its document. */
  public static Map<String, List<String>> form(Recipe recipe) {
    return FormPrint.of(RecipeDocument.write(recipe, Notes.key(recipe.notes())));
  }

  /**
   * Reads a gate from the fields of a form, such as {@code channels.0.release.1.time}; the knots of
   * a transfer stand in one field, a pair a line. {@link #form(Gate)} gives the fields of a gate.
   *
   * @throws thudbook.quantities.Refusal with all faults of it; their places lead to fields
   */
  public static Gate gateFromForm(Map<String, List<String>> form, Identity identity) {
    Gate gate = FormReading.gate(form, identity);
    refuseTooLong(write(gate));
    return gate;
  }

  /** A gate as the fields of a form, in the order of its document. */
  public static Map<String, List<String>> form(Gate gate) {
    return FormPrint.of(GateDocument.write(gate, Notes.key(gate.notes())));
  }

  /**
   * Reads a module from the fields of a form, such as {@code controls.0.from}; positions and sweeps
   * stand in one field with commas, the points of a table in one field, a pair a line. {@link
   * #form(Module)} gives the fields of a module.
   *
   * @throws thudbook.quantities.Refusal with all faults of it; their places lead to fields
   */
  public static Module moduleFromForm(Map<String, List<String>> form, Identity identity) {
    Module module = FormReading.module(form, identity);
    refuseTooLong(write(module));
    return module;
  }

  /** A module as the fields of a form, in the order of its document. */
  public static Map<String, List<String>> form(Module module) {
    return FormPrint.of(ModuleDocument.write(module, Notes.key(module.notes())));
  }

  private static Fields fieldsOfJson(byte[] json, String format, Faults faults) {
    Fields fields = Fields.of(JsonTree.read(json), faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    if (fields.get("thudbook") != null) {
      String found = Names.format(fields, format, faults);
      if (found != null && !found.equals(format)) {
        faults.add(fields.placeOf("thudbook"), "unknown-format", found, format);
      }
      faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    }
    return fields;
  }

  private static ARecipe recipe(Fields fields, String notes, Identity identity, Faults faults) {
    Recipe recipe = RecipeDocument.read(fields, notes, identity, faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    return new ARecipe(Objects.requireNonNull(recipe));
  }

  private static AGate gate(Fields fields, String notes, Identity identity, Faults faults) {
    Gate gate = GateDocument.read(fields, notes, identity, faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    return new AGate(Objects.requireNonNull(gate));
  }

  private static ASession session(Fields fields, String notes, Identity identity, Faults faults) {
    Session session = SessionDocument.read(fields, notes, identity, faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    return new ASession(Objects.requireNonNull(session));
  }

  private static AModule module(Fields fields, String notes, Identity identity, Faults faults) {
    Module module = ModuleDocument.read(fields, notes, identity, faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    return new AModule(Objects.requireNonNull(module));
  }

  private static void refuseTooLong(String text) {
    if (text.getBytes(StandardCharsets.UTF_8).length > Utf8.LONGEST) {
      throw Utf8.tooLong();
    }
  }
}
