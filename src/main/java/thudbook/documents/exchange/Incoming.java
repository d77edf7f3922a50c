package thudbook.documents.exchange;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.function.Supplier;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.NounDocument;
import thudbook.documents.Slugs;
import thudbook.documents.tree.Faults;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/**
 * A document that came in.
 *
 * @param file where it stood, as its sender calls it
 */
public record Incoming(String file, Documents.Read<?> read) {
  /** More faults than a person mends at once are only counted. */
  private static final int MOST_FAULTS = 500;

  /** Gives ids, and slugs that neither the notebook nor an earlier document of the parcel has. */
  public static Identity identity(Supplier<UUID> ids, Predicate<String> slugTaken) {
    Set<String> given = new HashSet<>();
    return new Identity() {
      @Override
      public UUID newId() {
        return ids.get();
      }

      @Override
      public String slugFor(String title) {
        String slug = Slugs.of(title);
        String free = slug;
        for (int number = 2; slugTaken.test(free) || !given.add(free); number++) {
          free = slug + "-" + number;
        }
        return free;
      }
    };
  }

  /**
   * Reads all documents and tables of a parcel.
   *
   * @param nouns what a document may be of
   * @param columns takes how each column of a table was understood, a sentence each
   * @throws Refusal with all faults of all documents, each with file and line
   */
  public static List<Incoming> read(
      List<NounDocument<?>> nouns, Parcel parcel, Identity identity, List<String> columns) {
    List<Incoming> read = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    Refusal.Kind kind = Refusal.Kind.REFUSED_VALUES;
    for (Parcel.Item item : parcel.documents()) {
      try {
        read.add(new Incoming(item.name(), Documents.read(nouns, item.bytes(), identity)));
      } catch (Refusal refusal) {
        kind = refusal.kind();
        refusal.faults().forEach(fault -> faults.add(inFile(item, fault)));
      }
    }
    for (Parcel.Item item : parcel.tables()) {
      try {
        RecipeTable.Read table = RecipeTable.read(item.name(), item.bytes(), identity);
        read.addAll(table.recipes());
        columns.addAll(table.columns());
      } catch (Refusal refusal) {
        kind = refusal.kind();
        faults.addAll(refusal.faults());
      }
    }
    if (!faults.isEmpty()) {
      throw new Refusal(faults.size() == 1 ? kind : Refusal.Kind.REFUSED_VALUES, shortened(faults));
    }
    if (read.isEmpty()) {
      throw Refusal.of(
          Refusal.Kind.REFUSED_VALUES,
          "no-documents",
          "There is no document in what was sent: a document is a text file whose name ends in"
              + " .md.");
    }
    return read;
  }

  private static Fault inFile(Parcel.Item item, Fault fault) {
    int line = fault.line() == 0 ? 0 : fault.line() + item.lineOffset();
    String name = Faults.shown(item.name());
    String where = line == 0 ? name : String.format(Locale.ROOT, "%s, line %d", name, line);
    return new Fault(
        fault.place(),
        line,
        fault.code(),
        fault.found(),
        fault.expected(),
        where + ": " + fault.message());
  }

  private static List<Fault> shortened(List<Fault> faults) {
    if (faults.size() <= MOST_FAULTS) {
      return faults;
    }
    List<Fault> first = new ArrayList<>(faults.subList(0, MOST_FAULTS));
    String more = (faults.size() - MOST_FAULTS) + " more faults are not listed";
    first.add(new Fault("", 0, "more-faults", "", "", more));
    return first;
  }
}
