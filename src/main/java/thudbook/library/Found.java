package thudbook.library;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A page of what was found.
 *
 * @param keys of the recipes, in order
 * @param total how many were found over all pages
 * @param offset how many come before this page
 * @param previous cursor of the page before this one, empty where that is the first page; null:
 *     this is the first
 * @param next cursor of the page after this one; null: this is the last
 */
public record Found(
    List<Integer> keys, int total, int offset, @Nullable String previous, @Nullable String next) {
  public Found {
    keys = List.copyOf(keys);
  }
}
