package thudbook.library;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How recipes are ordered. Those that lack the number come last either way; equal ones come newest
 * first.
 *
 * @param quantity null: not by a number of the recipe
 * @param descending whether large numbers come first; only for quantities
 */
public record Ordering(By by, @Nullable Quantity quantity, boolean descending) {
  /** Saved last, first. */
  public static final Ordering NEWEST = new Ordering(By.NEWEST, null, false);

  /** By title, without case and accents. */
  public static final Ordering TITLE = new Ordering(By.TITLE, null, false);

  /** Where the words were found: in the title before tags before what was heard before the rest. */
  public static final Ordering RELEVANCE = new Ordering(By.RELEVANCE, null, false);

  /** Used last, first. */
  public static final Ordering LAST_USED = new Ordering(By.LAST_USED, null, false);

  /** What decides. */
  public enum By {
    NEWEST,
    TITLE,
    RELEVANCE,
    LAST_USED,
    QUANTITY
  }

  public Ordering {
    if ((by == By.QUANTITY) != (quantity != null)) {
      throw new IllegalArgumentException("an order by a quantity names it");
    }
  }

  /** By a number of the recipe. */
  public static Ordering of(Quantity quantity, boolean descending) {
    return new Ordering(By.QUANTITY, quantity, descending);
  }

  /** The name in addresses: {@code title}, {@code hold}, {@code -hold} for the largest first. */
  public String key() {
    return quantity == null
        ? by.name().toLowerCase(Locale.ROOT).replace('_', '-')
        : (descending ? "-" : "") + quantity.key();
  }

  /** Reads what {@link #key} wrote. */
  public static Optional<Ordering> ofKey(String key) {
    for (Ordering order : new Ordering[] {NEWEST, TITLE, RELEVANCE, LAST_USED}) {
      if (order.key().equals(key)) {
        return Optional.of(order);
      }
    }
    boolean descending = key.startsWith("-");
    return Quantity.ofKey(descending ? key.substring(1) : key)
        .map(quantity -> of(quantity, descending));
  }
}
