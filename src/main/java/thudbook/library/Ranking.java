package thudbook.library;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;
import org.roaringbitmap.IntIterator;
import org.roaringbitmap.RoaringBitmap;

/** Puts recipes in order, within one reading of the catalogue. */
final class Ranking {
  private final Catalogue catalogue;
  private final Ordering ordering;
  private final @Nullable Relevance relevance;
  private final boolean descending;

  /** An order by what the catalogue holds. */
  Ranking(Catalogue catalogue, Ordering ordering) {
    this(catalogue, ordering, null);
  }

  private Ranking(Catalogue catalogue, Ordering ordering, @Nullable Relevance relevance) {
    this.catalogue = catalogue;
    this.ordering = ordering;
    this.relevance = relevance;
    this.descending = ordering.by() != Ordering.By.QUANTITY || ordering.descending();
  }

  /** The best first. */
  static Ranking byRelevance(Catalogue catalogue, Relevance relevance) {
    return new Ranking(catalogue, Ordering.RELEVANCE, relevance);
  }

  /** A page, and how many recipes come before it. */
  record Page(List<Position> rows, int before, boolean more) {}

  /** The recipes behind a position, so many at most. */
  Page after(RoaringBitmap recipes, @Nullable Position after, int limit) {
    PriorityQueue<Position> best = new PriorityQueue<>(limit + 2, order().reversed());
    int before = 0;
    // Mostly the newest come first then, and the rest is passed over at a glance.
    IntIterator keys = recipes.getReverseIntIterator();
    while (keys.hasNext()) {
      int key = keys.next();
      if (after != null && compare(key, after) <= 0) {
        before++;
      } else if (best.size() <= limit) {
        best.add(position(key));
      } else if (compare(key, best.element()) < 0) {
        best.remove();
        best.add(position(key));
      }
    }
    List<Position> rows = best.stream().sorted(order()).toList();
    return new Page(rows.subList(0, Math.min(limit, rows.size())), before, rows.size() > limit);
  }

  /**
   * The position after which the page of so many recipes begins that ends with another position;
   * null: it is the first page.
   */
  @Nullable Position pageEndingAt(RoaringBitmap recipes, Position last, int limit) {
    PriorityQueue<Position> nearest = new PriorityQueue<>(limit + 2, order());
    IntIterator keys = recipes.getIntIterator();
    while (keys.hasNext()) {
      int key = keys.next();
      boolean near = nearest.size() <= limit || compare(key, nearest.element()) > 0;
      if (near && compare(key, last) <= 0) {
        nearest.add(position(key));
        if (nearest.size() > limit + 1) {
          nearest.remove();
        }
      }
    }
    return nearest.size() > limit ? nearest.element() : null;
  }

  private Comparator<Position> order() {
    return (one, other) -> compare(one.number(), one.title(), one.changedAt(), one.key(), other);
  }

  /** Compares without making an object: most recipes are only passed over. */
  private int compare(int key, Position other) {
    return compare(number(key), title(key), catalogue.changedAt(key), key, other);
  }

  private int compare(double number, String title, long changedAt, int key, Position other) {
    int deciding =
        switch (ordering.by()) {
          case TITLE -> title.compareTo(other.title());
          case NEWEST -> 0;
          case RELEVANCE, LAST_USED, QUANTITY -> compare(number, other.number());
        };
    if (deciding != 0) {
      return deciding;
    }
    int newer = Long.compare(other.changedAt(), changedAt);
    return newer != 0 ? newer : Integer.compare(other.key(), key);
  }

  /** What is absent comes last either way. */
  private int compare(double number, double other) {
    // Zeros of either sign are equal.
    if (number < other) {
      return descending ? 1 : -1;
    }
    if (number > other) {
      return descending ? -1 : 1;
    }
    return Boolean.compare(Double.isNaN(number), Double.isNaN(other));
  }

  private Position position(int key) {
    return new Position(number(key), title(key), catalogue.changedAt(key), key);
  }

  private String title(int key) {
    return ordering.by() == Ordering.By.TITLE ? catalogue.title(key) : "";
  }

  private double number(int key) {
    return switch (ordering.by()) {
      case TITLE, NEWEST -> 0;
      case RELEVANCE -> Objects.requireNonNull(relevance).of(key);
      case LAST_USED -> {
        long used = catalogue.lastUsedAt(key);
        yield used == Long.MIN_VALUE ? Double.NaN : used;
      }
      case QUANTITY -> catalogue.number(Objects.requireNonNull(ordering.quantity()), key);
    };
  }
}
