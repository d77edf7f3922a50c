package thudbook.library;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.ReadWriteLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.roaringbitmap.RoaringBitmap;
import thudbook.predictions.Reach;
import thudbook.predictions.SmallShape;

/**
 * The recipes that are not in the bin, as plain arrays in memory: a column for each number, a
 * bitmap for each value of a facet. Rows have the keys of the store, which begin at 1 and have few
 * gaps.
 *
 * <p>It is filled when the notebook is opened and updated after each commit, in the order of the
 * commits. Searches run side by side; an update waits for those that are under way.
 */
public final class Catalogue {
  static final int SHAPE_POINTS = SmallShape.POINTS;

  /** Shapes are kept in steps of 0.01 dB; that is what likeness is measured with. */
  static final int SHAPE_STEPS_PER_DB = 100;

  /** The day of a recipe that does not tell when it was made. */
  private static final int NO_DAY = Integer.MIN_VALUE;

  private static final double GROWTH = 1.5;
  private static final int FIRST_CAPACITY = 64;

  private final ReadWriteLock lock = new ReentrantReadWriteLock();
  private final RoaringBitmap standing = new RoaringBitmap();
  private final Map<Facet, Map<String, Group>> facets = new EnumMap<>(Facet.class);
  private final Map<Flag, RoaringBitmap> flags = new EnumMap<>(Flag.class);
  private final Map<String, RoaringBitmap> favourites = new HashMap<>();
  private final RoaringBitmap shaped = new RoaringBitmap();
  private final double[][] numbers = new double[Quantity.values().length][0];
  private final byte[][] bins = new byte[Quantity.values().length][0];
  private String[] titles = new String[0];
  private long[] changedAt = new long[0];
  private long[] lastUsedAt = new long[0];
  private int[] madeOn = new int[0];
  private final AtomicLong version = new AtomicLong();
  private short[] shapes = new short[0];

  /** An empty catalogue. */
  public Catalogue() {
    for (Facet facet : Facet.values()) {
      facets.put(facet, new HashMap<>());
    }
    for (Flag flag : Flag.values()) {
      flags.put(flag, new RoaringBitmap());
    }
  }

  /**
   * The recipes with one value of a facet.
   *
   * @param label as it is shown
   * @param words of the value, folded
   */
  record Group(String label, List<String> words, RoaringBitmap recipes) {}

  /**
   * Fills an empty catalogue.
   *
   * @param largest no key is larger
   * @param rows gives each recipe once to what it is handed; one row may be used again and again
   */
  public void fill(int largest, Consumer<Consumer<CatalogueRow>> rows) {
    lock.writeLock().lock();
    try {
      reserve(largest, 1);
      rows.accept(this::put);
      compact();
    } finally {
      lock.writeLock().unlock();
    }
  }

  /**
   * Puts what is known now in place of what was known.
   *
   * @param keys recipes that may have changed, come or gone
   * @param rows those of them that are not in the bin
   */
  public void replace(List<Integer> keys, List<CatalogueRow> rows) {
    RoaringBitmap gone = new RoaringBitmap();
    keys.forEach(gone::add);
    lock.writeLock().lock();
    try {
      remove(gone);
      rows.forEach(this::put);
      version.incrementAndGet();
    } finally {
      lock.writeLock().unlock();
    }
  }

  private void remove(RoaringBitmap gone) {
    standing.andNot(gone);
    shaped.andNot(gone);
    flags.values().forEach(recipes -> recipes.andNot(gone));
    favourites.values().forEach(recipes -> recipes.andNot(gone));
    for (Map<String, Group> groups : facets.values()) {
      groups.values().forEach(group -> group.recipes().andNot(gone));
      groups.values().removeIf(group -> group.recipes().isEmpty());
    }
  }

  private void put(CatalogueRow row) {
    int key = row.key();
    reserve(key, GROWTH);
    standing.add(key);
    titles[key] = row.titleKey();
    changedAt[key] = row.changedAt();
    lastUsedAt[key] = row.lastUsedAt();
    LocalDate made = row.madeOn();
    madeOn[key] = made == null ? NO_DAY : Math.toIntExact(made.toEpochDay());
    for (Quantity quantity : Quantity.values()) {
      double value = row.number(quantity);
      numbers[quantity.column()][key] = value;
      bins[quantity.column()][key] = Double.isNaN(value) ? -1 : (byte) quantity.bins().of(value);
    }
    for (CatalogueRow.Value value : row.values()) {
      Map<String, Group> groups = groups(value.facet());
      Group group = groups.get(value.key());
      if (group == null || !group.label().equals(value.label())) {
        // The spelling that was written last counts.
        group =
            new Group(
                value.label(),
                Words.of(value.key()),
                group == null ? new RoaringBitmap() : group.recipes());
        groups.put(value.key(), group);
      }
      group.recipes().add(key);
    }
    row.flags().forEach(flag -> holding(flag).add(key));
    row.favouriteOf()
        .forEach(member -> favourites.computeIfAbsent(member, any -> new RoaringBitmap()).add(key));
    if (row.hasShape()) {
      shaped.add(key);
      for (int i = 0; i < SHAPE_POINTS; i++) {
        shapes[key * SHAPE_POINTS + i] = row.level(i);
      }
    }
  }

  private void reserve(int key, double growth) {
    if (key < titles.length) {
      return;
    }
    int capacity = Math.max(FIRST_CAPACITY, (int) (growth * key) + 1);
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = Arrays.copyOf(numbers[i], capacity);
      bins[i] = Arrays.copyOf(bins[i], capacity);
    }
    titles = Arrays.copyOf(titles, capacity);
    changedAt = Arrays.copyOf(changedAt, capacity);
    lastUsedAt = Arrays.copyOf(lastUsedAt, capacity);
    madeOn = Arrays.copyOf(madeOn, capacity);
    shapes = Arrays.copyOf(shapes, capacity * SHAPE_POINTS);
  }

  private void compact() {
    standing.runOptimize();
    shaped.runOptimize();
    facets.values().forEach(map -> map.values().forEach(group -> group.recipes().runOptimize()));
  }

  /** Looks something up in one state of the catalogue. */
  <T> T read(Supplier<T> work) {
    lock.readLock().lock();
    try {
      return work.get();
    } finally {
      lock.readLock().unlock();
    }
  }

  /** A number that rises with every change. */
  long version() {
    return version.get();
  }

  /** How many recipes there are. */
  public int size() {
    return read(standing::getCardinality);
  }

  /** The values of a facet with what they are called. */
  public Map<String, String> labels(Facet facet) {
    return read(
        () -> {
          Map<String, String> labels = new HashMap<>();
          groups(facet).forEach((key, group) -> labels.put(key, group.label()));
          return labels;
        });
  }

  /**
   * The values of a facet with the number of recipes of each, those of most recipes first.
   *
   * @param limit at most so many
   */
  public List<Counts.Value> mostUsed(Facet facet, int limit) {
    return read(
        () ->
            groups(facet).entrySet().stream()
                .map(
                    group ->
                        new Counts.Value(
                            group.getKey(),
                            group.getValue().label(),
                            group.getValue().recipes().getCardinality()))
                .sorted(
                    Comparator.comparingInt(Counts.Value::recipes)
                        .reversed()
                        .thenComparing(Counts.Value::key))
                .limit(limit)
                .toList());
  }

  /** How far a strike opens a gate, in the word of files and JSON. */
  public static String word(Reach reach) {
    return reach.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  // What follows is read within read(…) only.

  RoaringBitmap standing() {
    return standing;
  }

  /** Recipes that have a shape, so that others can be like them. */
  RoaringBitmap shaped() {
    return shaped;
  }

  Map<String, Group> groups(Facet facet) {
    return Objects.requireNonNull(facets.get(facet));
  }

  RoaringBitmap holding(Flag flag, String member) {
    return flag == Flag.FAVOURITE
        ? favourites.getOrDefault(member, new RoaringBitmap())
        : holding(flag);
  }

  private RoaringBitmap holding(Flag flag) {
    return Objects.requireNonNull(flags.get(flag));
  }

  double number(Quantity quantity, int key) {
    return numbers[quantity.column()][key];
  }

  double[] numbers(Quantity quantity) {
    return numbers[quantity.column()];
  }

  byte[] bins(Quantity quantity) {
    return bins[quantity.column()];
  }

  String title(int key) {
    return titles[key];
  }

  long changedAt(int key) {
    return changedAt[key];
  }

  /** When somebody used it last, in milliseconds; the least of all numbers if nobody did. */
  long lastUsedAt(int key) {
    return lastUsedAt[key];
  }

  boolean hasDay(int key) {
    return madeOn[key] != NO_DAY;
  }

  /** The day on which it was made, in days since 1970. */
  int madeOn(int key) {
    return madeOn[key];
  }

  /** The shapes of all recipes: 48 levels in steps of 0.01 dB for each key. */
  short[] shapes() {
    return shapes;
  }
}
