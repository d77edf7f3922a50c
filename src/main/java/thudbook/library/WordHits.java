package thudbook.library;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import org.roaringbitmap.FastAggregation;
import org.roaringbitmap.RoaringBitmap;
import org.roaringbitmap.RoaringBitmapWriter;
import thudbook.library.WordIndex.Rank;

/**
 * The recipes that have a term somewhere but in their tags; in the title; in the line by ear.
 * Nobody may change them.
 */
record WordHits(RoaringBitmap anywhere, RoaringBitmap title, RoaringBitmap heard) {
  /** What three empty bitmaps and their term take, about. */
  private static final int OWN_BYTES = 500;

  /** Looks a term up. */
  static WordHits of(WordIndex index, Term term) {
    Map<Rank, RoaringBitmapWriter<RoaringBitmap>> writers = new EnumMap<>(Rank.class);
    for (Rank rank : Rank.values()) {
      writers.put(rank, RoaringBitmapWriter.writer().constantMemory().get());
    }
    index.find(term, (rank, key) -> Objects.requireNonNull(writers.get(rank)).add(key));
    Map<Rank, RoaringBitmap> found = new EnumMap<>(Rank.class);
    writers.forEach((rank, writer) -> found.put(rank, writer.get()));
    return new WordHits(
        FastAggregation.or(found.values().toArray(RoaringBitmap[]::new)),
        Objects.requireNonNull(found.get(Rank.TITLE)),
        Objects.requireNonNull(found.get(Rank.HEARD)));
  }

  /** About what they take in memory. */
  long bytes() {
    return OWN_BYTES
        + anywhere.getLongSizeInBytes()
        + title.getLongSizeInBytes()
        + heard.getLongSizeInBytes();
  }
}
