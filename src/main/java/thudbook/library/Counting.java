package thudbook.library;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.roaringbitmap.BatchIterator;
import org.roaringbitmap.RoaringBitmap;

/** Counts what would remain, within one reading of the catalogue. */
final class Counting {
  private static final int BATCH = 256;

  private final Catalogue catalogue;
  private final Selection selection;
  private final String member;

  Counting(Catalogue catalogue, Selection selection, String member) {
    this.catalogue = catalogue;
    this.selection = selection;
    this.member = member;
  }

  Counts counts(Collection<Quantity> quantities) {
    Map<Facet, List<Counts.Value>> values = new EnumMap<>(Facet.class);
    for (Facet facet : Facet.values()) {
      values.put(facet, values(facet));
    }
    Map<Flag, Integer> flags = new EnumMap<>(Flag.class);
    for (Flag flag : Flag.values()) {
      flags.put(
          flag,
          RoaringBitmap.andCardinality(selection.allBut(flag), catalogue.holding(flag, member)));
    }
    Map<Quantity, List<Integer>> histograms = new EnumMap<>(Quantity.class);
    for (Quantity quantity : quantities) {
      histograms.put(quantity, histogram(quantity));
    }
    return new Counts(selection.all().getCardinality(), values, flags, histograms);
  }

  private List<Counts.Value> values(Facet facet) {
    RoaringBitmap among = facet.all() ? selection.all() : selection.allBut(facet);
    List<Counts.Value> values = new ArrayList<>();
    catalogue
        .groups(facet)
        .forEach(
            (key, group) -> {
              int recipes = RoaringBitmap.andCardinality(among, group.recipes());
              if (recipes > 0) {
                values.add(new Counts.Value(key, group.label(), recipes));
              }
            });
    values.sort(
        Comparator.comparingInt(Counts.Value::recipes).reversed().thenComparing(Counts.Value::key));
    return values;
  }

  private List<Integer> histogram(Quantity quantity) {
    byte[] bins = catalogue.bins(quantity);
    int[] bars = new int[Bins.COUNT + 1];
    BatchIterator keys = selection.allBut(quantity).getBatchIterator();
    int[] batch = new int[BATCH];
    while (keys.hasNext()) {
      int size = keys.nextBatch(batch);
      for (int i = 0; i < size; i++) {
        bars[bins[batch[i]] + 1]++;
      }
    }
    List<Integer> histogram = new ArrayList<>(Bins.COUNT);
    for (int bar = 1; bar <= Bins.COUNT; bar++) {
      histogram.add(bars[bar]);
    }
    return histogram;
  }
}
