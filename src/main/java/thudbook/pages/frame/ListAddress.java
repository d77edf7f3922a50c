package thudbook.pages.frame;

import thudbook.library.Facet;
import thudbook.library.Wanted;
import thudbook.library.Words;
import thudbook.library.typed.SearchAddress;

/** Addresses of the list of recipes. */
public final class ListAddress {
  private ListAddress() {}

  /**
   * Where a search is answered.
   *
   * @param after the place that the page begins after; empty: it is the first
   */
  public static String of(SearchAddress search, String after) {
    String query = search.query();
    if (!after.isEmpty()) {
      query += (query.isEmpty() ? "" : "&") + "after=" + after;
    }
    return query.isEmpty() ? "/" : "/?" + query;
  }

  /** The list of a tag, newest first. */
  public static String ofTag(String tag) {
    return of(SearchAddress.ALL.with(Wanted.ALL.choosing(Facet.TAG, Words.fold(tag))), "");
  }
}
