package thudbook.library;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SortedSet;
import java.util.concurrent.TimeUnit;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import org.roaringbitmap.BitSetUtil;
import org.roaringbitmap.FastAggregation;
import org.roaringbitmap.RoaringBitmap;

/**
 * The recipes that each part of a search leaves, so that one of them can be left out when it is
 * counted what else would remain. Made and used within one reading of the catalogue.
 */
final class Selection {
  private static final long DAY = TimeUnit.DAYS.toMillis(1);

  private final Catalogue catalogue;

  /** By facet, flag, quantity, or a word of our own for what is never left out. */
  private final Map<Object, RoaringBitmap> parts = new LinkedHashMap<>();

  private final RoaringBitmap all;

  /**
   * Applies a search.
   *
   * @param words the recipes in which its words are found, without those that are excluded; null:
   *     no words are asked
   */
  Selection(Catalogue catalogue, Wanted wanted, String member, @Nullable RoaringBitmap words) {
    this.catalogue = catalogue;
    parts.put("standing", catalogue.standing());
    if (words != null) {
      parts.put("words", words);
    }
    for (Facet facet : Facet.values()) {
      choose(facet, wanted.chosen(facet));
      refuse(facet, wanted.refused(facet));
    }
    wanted
        .flags()
        .forEach(
            (flag, holds) -> {
              RoaringBitmap holding = catalogue.holding(flag, member);
              parts.put(
                  flag, holds ? holding : RoaringBitmap.andNot(catalogue.standing(), holding));
            });
    if (!wanted.changed().isAny()) {
      Days days = wanted.changed();
      long from = days.from() == null ? Long.MIN_VALUE : millis(days.from());
      long to = days.to() == null ? Long.MAX_VALUE : millis(days.to()) + DAY;
      parts.put(
          "changed",
          where(key -> catalogue.changedAt(key) >= from && catalogue.changedAt(key) < to));
    }
    if (!wanted.made().isAny()) {
      Days days = wanted.made();
      parts.put(
          "made",
          where(
              key ->
                  catalogue.hasDay(key)
                      && days.admit(LocalDate.ofEpochDay(catalogue.madeOn(key)))));
    }
    wanted
        .limits()
        .forEach(
            (quantity, limits) -> {
              double[] column = catalogue.numbers(quantity);
              parts.put(quantity, where(key -> limits.admit(column[key])));
            });
    all = and(null);
  }

  private static long millis(LocalDate day) {
    return day.atStartOfDay(ZoneOffset.UTC).toInstant().toEpochMilli();
  }

  private void choose(Facet facet, SortedSet<String> values) {
    if (values.isEmpty()) {
      return;
    }
    RoaringBitmap[] groups =
        values.stream().map(value -> of(facet, value)).toArray(RoaringBitmap[]::new);
    parts.put(facet, facet.all() ? FastAggregation.and(groups) : FastAggregation.or(groups));
  }

  private void refuse(Facet facet, SortedSet<String> values) {
    if (!values.isEmpty()) {
      RoaringBitmap left = catalogue.standing().clone();
      values.forEach(value -> left.andNot(of(facet, value)));
      parts.put("not " + facet.key(), left);
    }
  }

  private RoaringBitmap of(Facet facet, String value) {
    Catalogue.Group group = catalogue.groups(facet).get(value);
    return group == null ? new RoaringBitmap() : group.recipes();
  }

  /**
   * The keys that hold to something, also of recipes that are gone: another part leaves them out. A
   * walk over all keys is several times faster than one over those of a bitmap.
   */
  private RoaringBitmap where(IntPredicate holds) {
    if (catalogue.standing().isEmpty()) {
      return new RoaringBitmap();
    }
    int last = catalogue.standing().last();
    long[] bits = new long[last / Long.SIZE + 1];
    for (int key = 0; key <= last; key++) {
      if (holds.test(key)) {
        bits[key / Long.SIZE] |= 1L << key;
      }
    }
    return BitSetUtil.bitmapOf(bits);
  }

  /** The recipes that hold to everything. */
  RoaringBitmap all() {
    return all;
  }

  /** The recipes that hold to everything but what is asked of one facet, flag or quantity. */
  RoaringBitmap allBut(Object part) {
    return parts.containsKey(part) ? and(part) : all;
  }

  private RoaringBitmap and(@Nullable Object but) {
    RoaringBitmap left = null;
    for (Map.Entry<Object, RoaringBitmap> part : parts.entrySet()) {
      if (!part.getKey().equals(but)) {
        if (left == null) {
          left = part.getValue().clone();
        } else {
          left.and(part.getValue());
        }
      }
    }
    return left == null ? new RoaringBitmap() : left;
  }
}
