package thudbook.documents;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Noun;
import thudbook.changes.Thing;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.FormPrint;
import thudbook.documents.tree.FormTree;
import thudbook.documents.tree.FrontMatter;
import thudbook.documents.tree.JsonPrint;
import thudbook.documents.tree.JsonTree;
import thudbook.documents.tree.Utf8;
import thudbook.documents.tree.YamlPrint;
import thudbook.quantities.Refusal;

/**
 * How things of a noun are read and written, as text, as JSON and as the fields of a form. Whoever
 * adds a noun gives a reader and a writer of its keys; all the rest follows.
 *
 * @param <T> the things
 */
public abstract class NounDocument<T extends Thing> implements Noun<T> {
  /** What was stored has an id and a slug. */
  private static final Identity STORED =
      new Identity() {
        @Override
        public UUID newId() {
          throw new IllegalStateException("a stored document has no id");
        }

        @Override
        public String slugFor(String title) {
          throw new IllegalStateException("the stored document " + title + " has no slug");
        }
      };

  private final Class<T> type;
  private final String word;
  private final String format;

  /**
   * The documents of a noun.
   *
   * @param word what one is called; its format is the first of this name: {@code gate/1}
   */
  NounDocument(Class<T> type, String word) {
    this.type = type;
    this.word = word;
    this.format = word + "/1";
  }

  /**
   * Reads the keys of a thing, all but {@code thudbook}.
   *
   * @return null if anything is wrong with it
   */
  abstract @Nullable T read(Fields fields, String notes, Identity identity, Faults faults);

  /**
   * Writes the keys of a thing.
   *
   * @param notes what comes behind them; null: the notes stand elsewhere
   */
  abstract Draft.Mapping write(T thing, Draft.@Nullable Keys notes);

  /** The notes of a thing. */
  abstract String notes(T thing);

  /** What these documents say of themselves in the key {@code thudbook}. */
  final String format() {
    return format;
  }

  /** Whether a thing is one of these. */
  final boolean isOf(Thing thing) {
    return type.isInstance(thing);
  }

  @Override
  public final String word() {
    return word;
  }

  @Override
  public final T read(String document) {
    byte[] bytes = document.getBytes(StandardCharsets.UTF_8);
    return type.cast(Documents.read(List.of(this), bytes, STORED).thing());
  }

  @Override
  public final String write(T thing) {
    String text = Notes.kept(notes(thing));
    String fence = FrontMatter.FENCE + "\n";
    return fence + YamlPrint.of(write(thing, null)) + fence + text + (text.isEmpty() ? "" : "\n");
  }

  /** A thing as JSON: the documents' keys with plain SI numbers, and {@code notes}. */
  public final String json(T thing) {
    return JsonPrint.of(whole(thing));
  }

  /** A thing as the fields of a form, in the order of its document. */
  public final Map<String, List<String>> form(T thing) {
    return FormPrint.of(whole(thing));
  }

  /** All keys of a thing, with its notes. */
  final Draft.Mapping whole(T thing) {
    return write(thing, Notes.key(notes(thing)));
  }

  /**
   * Reads a thing from JSON. The key {@code thudbook} may be absent.
   *
   * @throws Refusal with all faults of it
   */
  public final T fromJson(byte[] json, Identity identity) {
    Faults faults = new Faults();
    Fields fields = Fields.of(JsonTree.read(json), faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    if (fields.get("thudbook") != null) {
      Names.format(fields, List.of(format), faults);
      faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    }
    return whole(fields, identity, faults);
  }

  /**
   * Reads a thing from the fields of a form: names are pointers with dots, such as {@code
   * recipes.0.note}, as {@link #form} gives them. Blank values are not written. Where a block has
   * kinds the form keeps the fields of each, {@code source.fm.carrier}; positions and sweeps stand
   * in one field with commas, the points of a table in one field, a pair a line.
   *
   * @throws Refusal with all faults of it; their places lead to fields
   */
  public final T fromForm(Map<String, List<String>> form, Identity identity) {
    Faults faults = new Faults();
    return whole(Fields.of(FormTree.of(kept(form, faults)), faults), identity, faults);
  }

  /** The fields of a form that are kept; those that can't be are faults. */
  Map<String, List<String>> kept(Map<String, List<String>> form, Faults faults) {
    return form;
  }

  /** What differs between two states of a thing, one sentence each; none: nothing. */
  public final List<String> differences(T before, T after) {
    return words(before, after).all(Differences.between(this, before, after));
  }

  /** How differences between two states of a thing are told. */
  DifferenceWords words(T before, T after) {
    return DifferenceWords.PLAIN;
  }

  private T whole(Fields fields, Identity identity, Faults faults) {
    String notes = Notes.read(fields, faults);
    T thing = certain(fields, notes, identity, faults).thing();
    if (write(thing).getBytes(StandardCharsets.UTF_8).length > Utf8.LONGEST) {
      throw Utf8.tooLong();
    }
    return thing;
  }

  /** Reads the keys of a thing that has no faults. */
  final Documents.Read<T> certain(Fields fields, String notes, Identity identity, Faults faults) {
    T thing = read(fields, notes, identity, faults);
    faults.refuseIfAny(Refusal.Kind.REFUSED_VALUES);
    return new Documents.Read<>(this, Objects.requireNonNull(thing), List.of());
  }
}
