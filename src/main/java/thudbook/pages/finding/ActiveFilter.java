package thudbook.pages.finding;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import thudbook.library.Days;
import thudbook.library.Facet;
import thudbook.library.Wanted;
import thudbook.library.typed.SearchAddress;
import thudbook.pages.frame.ListAddress;

/**
 * Something that is asked beside the typed search.
 *
 * @param words what is asked
 * @param without address of the same search without it
 */
public record ActiveFilter(String words, String without) {
  /** Everything that is asked beside the typed search. */
  static List<ActiveFilter> all(SearchAddress search, FilterWords words) {
    Wanted wanted = search.filters();
    List<ActiveFilter> active = new ArrayList<>();
    for (Facet facet : Facet.values()) {
      for (String value : wanted.chosen(facet)) {
        add(active, search, words.asked(facet, value), wanted.dropping(facet, value));
      }
    }
    for (Map.Entry<Facet, SortedSet<String>> refused : wanted.refused().entrySet()) {
      for (String value : refused.getValue()) {
        add(
            active,
            search,
            "not " + words.asked(refused.getKey(), value),
            wanted.dropping(refused.getKey(), value));
      }
    }
    wanted
        .flags()
        .forEach(
            (flag, holds) ->
                add(active, search, FilterWords.asked(flag, holds), wanted.dropping(flag)));
    if (!wanted.made().isAny()) {
      add(active, search, FilterWords.asked("made", wanted.made()), dated(wanted, true));
    }
    if (!wanted.changed().isAny()) {
      add(active, search, FilterWords.asked("changed", wanted.changed()), dated(wanted, false));
    }
    wanted
        .limits()
        .forEach(
            (quantity, limits) ->
                add(
                    active,
                    search,
                    FilterWords.asked(quantity, limits),
                    wanted.dropping(quantity)));
    return active;
  }

  private static Wanted dated(Wanted wanted, boolean madeAnyDay) {
    return new Wanted(
        wanted.words(),
        wanted.without(),
        wanted.chosen(),
        wanted.refused(),
        wanted.flags(),
        madeAnyDay ? Days.ANY : wanted.made(),
        madeAnyDay ? wanted.changed() : Days.ANY,
        wanted.limits());
  }

  private static void add(
      List<ActiveFilter> active, SearchAddress search, String words, Wanted without) {
    active.add(new ActiveFilter(words, ListAddress.of(search.with(without), "")));
  }
}
