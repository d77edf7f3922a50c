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
  private final Relevance relevance;
  private final Comparator<Position> order;

  Ranking(Catalogue catalogue, Ordering ordering, Relevance relevance) {
    this.catalogue = catalogue;
    this.ordering = ordering;
    this.relevance = relevance;
    this.order = order(ordering);
  }

  private static Comparator<Position> order(Ordering ordering) {
    Comparator<Position> deciding =
        switch (ordering.by()) {
          case TITLE -> Comparator.comparing(Position::title);
          case NEWEST -> Comparator.comparingInt(any -> 0);
          case RELEVANCE, LAST_USED -> byNumber(true);
          case QUANTITY -> byNumber(ordering.descending());
        };
    return deciding
        .thenComparing(Comparator.comparingLong(Position::changedAt).reversed())
        .thenComparing(Comparator.comparingInt(Position::key).reversed());
  }

  private static Comparator<Position> byNumber(boolean descending) {
    return (one, other) -> {
      boolean none = Double.isNaN(one.number());
      if (none || Double.isNaN(other.number())) {
        return Boolean.compare(none, Double.isNaN(other.number()));
      }
      // Zeros of either sign are equal.
      int rising = one.number() < other.number() ? -1 : one.number() > other.number() ? 1 : 0;
      return descending ? -rising : rising;
    };
  }

  /** A page, and how many recipes come before it. */
  record Page(List<Position> rows, int before, boolean more) {}

  /** The recipes behind a position, so many at most. */
  Page after(RoaringBitmap recipes, @Nullable Position after, int limit) {
    PriorityQueue<Position> best = new PriorityQueue<>(limit + 2, order.reversed());
    int before = 0;
    // Mostly the newest come first then, and the rest is passed over at a glance.
    IntIterator keys = recipes.getReverseIntIterator();
    while (keys.hasNext()) {
      Position position = position(keys.next());
      if (after != null && order.compare(position, after) <= 0) {
        before++;
      } else if (best.size() <= limit) {
        best.add(position);
      } else if (order.compare(position, best.element()) < 0) {
        best.remove();
        best.add(position);
      }
    }
    List<Position> rows = best.stream().sorted(order).toList();
    return new Page(rows.subList(0, Math.min(limit, rows.size())), before, rows.size() > limit);
  }

  /**
   * The position after which the page of so many recipes begins that ends with another position;
   * null: it is the first page.
   */
  @Nullable Position pageEndingAt(RoaringBitmap recipes, Position last, int limit) {
    PriorityQueue<Position> nearest = new PriorityQueue<>(limit + 2, order);
    IntIterator keys = recipes.getIntIterator();
    while (keys.hasNext()) {
      Position position = position(keys.next());
      if (order.compare(position, last) <= 0) {
        nearest.add(position);
        if (nearest.size() > limit + 1) {
          nearest.remove();
        }
      }
    }
    return nearest.size() > limit ? nearest.element() : null;
  }

  private Position position(int key) {
    long changedAt = catalogue.changedAt(key);
    return switch (ordering.by()) {
      case TITLE -> new Position(0, catalogue.title(key), changedAt, key);
      case NEWEST -> new Position(0, "", changedAt, key);
      case RELEVANCE -> new Position(relevance.of(key), "", changedAt, key);
      case LAST_USED -> {
        long used = catalogue.lastUsedAt(key);
        yield new Position(used == Long.MIN_VALUE ? Double.NaN : used, "", changedAt, key);
      }
      case QUANTITY -> {
        Quantity quantity = Objects.requireNonNull(ordering.quantity());
        yield new Position(catalogue.number(quantity, key), "", changedAt, key);
      }
    };
  }
}
