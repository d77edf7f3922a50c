package thudbook.library;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.equipment.Gate;

/** Everything that finds recipes, over one notebook. */
public final class Library {
  private final Catalogue catalogue;
  private final Search search;
  private final RecipeList list;
  private final Things<Gate> gates;

  /** Finds among the recipes of a catalogue, with the index of their words. */
  public Library(Catalogue catalogue, WordIndex index, RecipeList list, Things<Gate> gates) {
    this.catalogue = catalogue;
    this.search = new Search(catalogue, index);
    this.list = list;
    this.gates = gates;
  }

  /** The recipes in memory. */
  public Catalogue catalogue() {
    return catalogue;
  }

  /** Finds keys. */
  public Search search() {
    return search;
  }

  /** What the list shows of keys. */
  public RecipeList list() {
    return list;
  }

  /** Ranks by likeness. */
  public Alike alike() {
    return new Alike(catalogue);
  }

  /** The names that a typed search may use. */
  public Vocabulary vocabulary() {
    return Vocabulary.of(gates.all().stream().map(Kept::thing).toList(), catalogue);
  }

  /**
   * Rows of one page of what is wanted.
   *
   * @param after the cursor of the wanted page; null or empty: the first page
   * @throws thudbook.quantities.Refusal if the cursor is not one of this search
   */
  public Page page(
      Wanted wanted, Ordering ordering, Author member, int limit, @Nullable String after) {
    Found found = search.find(wanted, ordering, member, limit, after);
    return new Page(found, list.rows(found.keys(), member));
  }

  /** A page with its rows. */
  public record Page(Found found, List<RecipeList.Row> rows) {
    public Page {
      rows = List.copyOf(rows);
    }
  }

  /** The recipes that were saved last. */
  public List<RecipeList.Row> newest(Author member, int limit) {
    return page(Wanted.ALL, Ordering.NEWEST, member, limit, null).rows();
  }
}
