package thudbook.pages.finding;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.library.Library;
import thudbook.library.ShelfStore.Shelf;
import thudbook.library.typed.SearchAddress;
import thudbook.library.typed.Typed;
import thudbook.pages.frame.ListAddress;

/**
 * The shelves, each with what stands on it now.
 *
 * @param waiting a shelf that is not up; null: there is none
 */
public record ShelfSheet(List<Line> lines, @Nullable Waiting waiting) {
  /**
   * A shelf as it is listed.
   *
   * @param asked what its search asks, in words
   * @param recipes how many stand on it now
   */
  public record Line(long id, String name, String address, String asked, int recipes) {}

  /**
   * What was to be put up or renamed and could not be, or was taken down a moment ago.
   *
   * @param search empty: it was to be renamed
   * @param fault what is wrong with the name; empty: it was taken down
   */
  public record Waiting(String name, String search, String fault) {}

  static ShelfSheet of(
      List<Shelf> shelves,
      @Nullable Waiting waiting,
      Library library,
      Things<Gate> gates,
      Author author) {
    FilterWords words = new FilterWords(library, gates);
    return new ShelfSheet(
        shelves.stream().map(shelf -> line(shelf, library, words, author)).toList(), waiting);
  }

  private static Line line(Shelf shelf, Library library, FilterWords words, Author author) {
    SearchAddress search = SearchAddress.ofQuery(shelf.search()).address();
    Typed typed = search.wanted(library::vocabulary);
    List<String> asked = new ArrayList<>(typed.understood());
    ActiveFilter.all(search, words).forEach(filter -> asked.add(filter.words()));
    return new Line(
        shelf.id(),
        shelf.name(),
        ListAddress.of(search, ""),
        asked.isEmpty() ? "every recipe" : String.join(", ", asked),
        library.search().counts(typed.wanted(), author, List.of()).total());
  }
}
