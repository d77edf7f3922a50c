package thudbook.documents.exchange;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Changes;
import thudbook.changes.Kept;
import thudbook.changes.Store;
import thudbook.changes.Thing;
import thudbook.changes.Write;
import thudbook.documents.Documents;
import thudbook.documents.NounDocument;
import thudbook.documents.Slugs;
import thudbook.quantities.Fault;

/**
 * What would happen if documents were taken into a notebook. Nothing is written here: a person
 * looks at it first.
 */
public record Import(List<Entry> entries) {
  public Import {
    entries = List.copyOf(entries);
  }

  /** What a document is to the notebook. */
  public enum Kind {
    /** The notebook does not have it. */
    NEW,
    /** The notebook has it with the very same text. */
    SAME,
    /** The notebook has it with another text. */
    CHANGES,
    /** Something is in the way. */
    CONFLICT
  }

  /**
   * A document and what it is to the notebook.
   *
   * @param details what changes, or what is in the way, a sentence each
   * @param version the version that it would change; null: none
   */
  public record Entry(
      String file,
      Documents.Read<?> read,
      Kind kind,
      List<String> details,
      @Nullable Long version) {
    public Entry {
      details = List.copyOf(details);
    }

    /** Whether importing it would do something. */
    public boolean canBeTaken() {
      return kind == Kind.NEW || kind == Kind.CHANGES;
    }

    /** What it is called: {@code gate}. */
    public String word() {
      return read.word();
    }

    /** Its name for people. */
    public String title() {
      return read.thing().title();
    }

    /** Its name in addresses. */
    public String slug() {
      return read.thing().slug();
    }

    /** What a reader should be told. */
    public List<String> notes() {
      return read.notes();
    }

    /** What would take it in. */
    public Write<?> write() {
      return read.write(version);
    }
  }

  /** Compares documents with a notebook. */
  public static Import of(List<Incoming> documents, Changes notebook) {
    Comparison comparison = new Comparison(notebook);
    return new Import(
        documents.stream()
            .map(document -> comparison.entry(document.file(), document.read()))
            .toList());
  }

  /** How many documents there are of a kind. */
  public long count(Kind kind) {
    return entries.stream().filter(entry -> entry.kind() == kind).count();
  }

  /** Compares one document after the other, each also with those before it. */
  private static final class Comparison {
    private final Changes notebook;
    private final Set<String> seen = new HashSet<>();
    private final Map<String, List<Write<?>>> earlier = new HashMap<>();

    Comparison(Changes notebook) {
      this.notebook = notebook;
    }

    <T extends Thing> Entry entry(String file, Documents.Read<T> read) {
      NounDocument<T> noun = read.noun();
      T thing = read.thing();
      Store<T> store = notebook.store(noun);
      Kept<T> there = store.find(thing.id().toString()).orElse(null);
      Kept<T> named = store.find(thing.slug()).orElse(null);
      List<String> inTheWay = inThisParcel(noun.word(), thing);
      if (named != null && !named.id().equals(thing.id())) {
        inTheWay.add("The slug " + thing.slug() + " is taken by " + named.title() + ".");
      } else if (named == null && Slugs.isKept(thing.slug())) {
        inTheWay.add("The slug " + thing.slug() + " is the address of a page of the notebook.");
      }
      if (there != null && there.isBinned()) {
        inTheWay.add("It is in the bin: take it out first.");
      }
      Long version = there == null ? null : there.version();
      Write<T> write = read.write(version);
      inTheWay.addAll(against(write));
      Kind kind = kind(inTheWay, there, write.document());
      List<String> details =
          there == null || !inTheWay.isEmpty() ? inTheWay : noun.differences(there.thing(), thing);
      return new Entry(file, read, kind, details, version);
    }

    /** What the rules of its noun say against a document beside those before it. */
    private <T extends Thing> List<String> against(Write<T> write) {
      List<Write<?>> all = earlier.computeIfAbsent(write.noun().word(), any -> new ArrayList<>());
      all.add(write);
      List<Fault> faults = notebook.against(write.noun(), all);
      if (!faults.isEmpty()) {
        all.remove(all.size() - 1);
      }
      return faults.stream().map(Fault::message).toList();
    }

    private List<String> inThisParcel(String noun, Thing thing) {
      List<String> inTheWay = new ArrayList<>();
      if (!seen.add(noun + " " + thing.id())) {
        inTheWay.add("Another document here has the same id.");
      }
      if (!seen.add(noun + " " + thing.slug())) {
        inTheWay.add("Another document here has the slug " + thing.slug() + ".");
      }
      return inTheWay;
    }

    private static Kind kind(List<String> inTheWay, @Nullable Kept<?> there, String document) {
      if (there != null && there.document().equals(document)) {
        return Kind.SAME;
      }
      if (!inTheWay.isEmpty()) {
        return Kind.CONFLICT;
      }
      return there == null ? Kind.NEW : Kind.CHANGES;
    }
  }
}
