package thudbook.documents;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Thing;
import thudbook.changes.Things;
import thudbook.changes.Write;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.FrontMatter;
import thudbook.documents.tree.JsonTree;
import thudbook.documents.tree.Place;
import thudbook.documents.tree.YamlTree;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.predictions.Sound;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;
import thudbook.sessions.Session;

/** Reads and writes the documents of the notebook, as text and as JSON. */
public final class Documents {
  /** Recipes. */
  public static final NounDocument<Recipe> RECIPE = RecipeDocument.NOUN;

  /** Gates. */
  public static final NounDocument<Gate> GATE = GateDocument.NOUN;

  /** Modules. */
  public static final NounDocument<Module> MODULE = ModuleDocument.NOUN;

  /** Sessions. */
  public static final NounDocument<Session> SESSION = SessionDocument.NOUN;

  /** All nouns, in the order in which they are listed. */
  public static final List<NounDocument<?>> NOUNS = List.of(RECIPE, GATE, MODULE, SESSION);

  private Documents() {}

  /**
   * A document that was read.
   *
   * @param notes what a reader should be told, such as "2 comments were dropped"
   */
  public record Read<T extends Thing>(NounDocument<T> noun, T thing, List<String> notes) {
    public Read {
      notes = List.copyOf(notes);
    }

    /** What it is, such as {@code recipe}. */
    public String word() {
      return noun.word();
    }

    /** Its canonical text. */
    public String text() {
      return noun.write(thing);
    }

    /**
     * What would write it down.
     *
     * @param version the version that is changed; null: it is new
     */
    public Write<T> write(@Nullable Long version) {
      return Write.changed(noun, thing, version);
    }

    /** The same with more to be told. */
    Read<T> with(List<String> more) {
      return new Read<>(noun, thing, more);
    }
  }

  /**
   * Reads a document of any noun.
   *
   * @param bytes UTF-8 text
   * @param identity gives an id and a slug to a document without them
   * @throws thudbook.quantities.Refusal with all faults of the document
   */
  public static Read<?> read(byte[] bytes, Identity identity) {
    return read(NOUNS, bytes, identity);
  }

  /** Reads a document of one of some nouns. */
  public static Read<?> read(
      List<? extends NounDocument<?>> nouns, byte[] bytes, Identity identity) {
    FrontMatter parts = FrontMatter.of(bytes);
    YamlTree.Parsed parsed = YamlTree.read(parts.yaml(), FrontMatter.FIRST_LINE);
    Faults faults = new Faults();
    Fields fields = Fields.of(parsed.tree(), faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    String format = Names.format(fields, nouns.stream().map(NounDocument::format).toList(), faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    NounDocument<?> noun =
        nouns.stream().filter(one -> one.format().equals(format)).findFirst().orElseThrow();
    String text = Notes.checked(parts.notes(), new Place(parts.notesLine(), "/notes"), faults);
    Read<?> read = noun.certain(fields, text, identity, faults);
    List<String> notes = new ArrayList<>(faults.notes());
    if (parsed.comments() > 0) {
      notes.add(
          parsed.comments() == 1
              ? "1 comment was dropped"
              : parsed.comments() + " comments were dropped");
    }
    return read.with(notes);
  }

  /** The canonical text of a thing: two things are the same if and only if theirs are equal. */
  public static <T extends Thing> String write(T thing) {
    return of(thing).write(thing);
  }

  /** A thing as JSON: the documents' keys with plain SI numbers, and {@code notes}. */
  public static <T extends Thing> String json(T thing) {
    return of(thing).json(thing);
  }

  /** A thing as the fields of a form, in the order of its document. */
  public static <T extends Thing> Map<String, List<String>> form(T thing) {
    return of(thing).form(thing);
  }

  /** The documents of the noun that a thing is. */
  @SuppressWarnings("unchecked") // It is asked whether the thing is one of them.
  static <T extends Thing> NounDocument<T> of(T thing) {
    return (NounDocument<T>)
        NOUNS.stream().filter(noun -> noun.isOf(thing)).findFirst().orElseThrow();
  }

  /**
   * Reads the body of a prediction: {@code {source, envelope, strikes?, stages, output?}}, stages
   * with gate and channel or with an inline channel. The envelope may be absent if every stage has
   * its own.
   *
   * @throws thudbook.quantities.Refusal with all faults of it
   */
  public static Sound soundFromJson(byte[] json, Things<Gate> gates) {
    return new PredictionBody(gates).read(JsonTree.read(json));
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
}
