package thudbook.library;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import org.roaringbitmap.IntIterator;
import org.roaringbitmap.RoaringBitmap;

/** Ranks recipes by how like they are to one, as {@link Likeness} says. */
public final class Alike {
  private static final double DB_PER_OCTAVE = 6;
  private static final double OTHER_SOURCE_DB = 12;
  private static final double OTHER_CHANNEL_DB = 3;
  private static final double ONLY_ONE_DB = 6;
  private static final double DB_PER_VOLT = 6;
  private static final double LOG_2 = Math.log(2);

  /** Levels that are looked at before it is asked whether they are too far already. */
  private static final int PART = 6;

  /** What a sum of squares of steps is divided by to be a mean square in dB². */
  private static final double SQUARES =
      (double) Catalogue.SHAPE_STEPS_PER_DB * Catalogue.SHAPE_STEPS_PER_DB * Catalogue.SHAPE_POINTS;

  private final Catalogue catalogue;

  /** Likeness within a catalogue. */
  public Alike(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  /**
   * A recipe that is like another.
   *
   * @param distance in dB
   */
  public record Neighbour(int key, double distance) {}

  /**
   * The recipes that are most like one, nearest first; of equally near ones the older first.
   *
   * @param limit 1 to 200
   * @return none if the recipe itself is not there, or has no prediction and the shape counts
   */
  public List<Neighbour> nearest(int recipe, Likeness likeness, int limit) {
    return catalogue.read(() -> within(recipe, likeness, limit));
  }

  private List<Neighbour> within(int recipe, Likeness likeness, int limit) {
    RoaringBitmap among = likeness == Likeness.SETTINGS ? catalogue.standing() : catalogue.shaped();
    if (!among.contains(recipe)) {
      return List.of();
    }
    Measure measure = new Measure(recipe, likeness);
    Comparator<Neighbour> order =
        Comparator.comparingDouble(Neighbour::distance).thenComparingInt(Neighbour::key);
    PriorityQueue<Neighbour> nearest = new PriorityQueue<>(limit + 1, order.reversed());
    double bound = Double.POSITIVE_INFINITY;
    IntIterator keys = among.getIntIterator();
    while (keys.hasNext()) {
      int key = keys.next();
      if (key == recipe) {
        continue;
      }
      double square = measure.square(key, bound);
      if (square < bound) {
        nearest.add(new Neighbour(key, square));
        if (nearest.size() > limit) {
          nearest.remove();
          bound = nearest.element().distance();
        }
      }
    }
    List<Neighbour> ranked = new ArrayList<>();
    for (Neighbour neighbour : nearest) {
      ranked.add(new Neighbour(neighbour.key(), Math.sqrt(neighbour.distance())));
    }
    ranked.sort(order);
    return ranked;
  }

  /** The distance of two recipes in dB; both must have a shape where it counts. */
  public double distance(int recipe, int other, Likeness likeness) {
    return catalogue.read(
        () -> Math.sqrt(new Measure(recipe, likeness).square(other, Double.POSITIVE_INFINITY)));
  }

  private static double octaves(double value) {
    return DB_PER_OCTAVE * Math.log(value) / LOG_2;
  }

  private OneNumber number(Quantity quantity, int recipe, DoubleUnaryOperator scale) {
    return new OneNumber(catalogue.numbers(quantity), recipe, scale);
  }

  /** The distances in one number. */
  private static final class OneNumber {
    private final double[] column;
    private final DoubleUnaryOperator scale;

    /** Of the recipe; NaN: it has none. */
    private final double own;

    private final double ownDb;

    /**
     * Distances from one recipe.
     *
     * @param scale leads to dB
     */
    OneNumber(double[] column, int recipe, DoubleUnaryOperator scale) {
      this.column = column;
      this.scale = scale;
      this.own = column[recipe];
      this.ownDb = scale.applyAsDouble(own);
    }

    double square(int key) {
      double other = column[key];
      if (Double.isNaN(own) || Double.isNaN(other)) {
        return Double.isNaN(own) == Double.isNaN(other) ? 0 : ONLY_ONE_DB * ONLY_ONE_DB;
      }
      if (own == other) {
        return 0;
      }
      double difference = ownDb - scale.applyAsDouble(other);
      return difference * difference;
    }
  }

  /** Squares of distances from one recipe. */
  private final class Measure {
    private final boolean shape;
    private final boolean settings;
    private final short[] shapes;
    private final int[] levels = new int[Catalogue.SHAPE_POINTS];
    private final OneNumber brightness;
    private final OneNumber carrier;
    private final OneNumber decay;
    private final OneNumber peak;
    private final OneNumber index;
    private final @Nullable RoaringBitmap source;
    private final RoaringBitmap channels;
    private final RoaringBitmap anySource = new RoaringBitmap();
    private final RoaringBitmap anyChannel = new RoaringBitmap();

    Measure(int recipe, Likeness likeness) {
      this.brightness = number(Quantity.BRIGHTNESS_PEAK, recipe, Alike::octaves);
      this.carrier = number(Quantity.CARRIER, recipe, Alike::octaves);
      this.decay = number(Quantity.DECAY, recipe, Alike::octaves);
      this.peak = number(Quantity.PEAK, recipe, volts -> volts * DB_PER_VOLT);
      this.index = number(Quantity.INDEX, recipe, i -> DB_PER_OCTAVE * Math.log1p(i) / LOG_2);
      this.shape = likeness != Likeness.SETTINGS;
      this.settings = likeness != Likeness.SHAPE;
      this.shapes = catalogue.shapes();
      for (int i = 0; i < levels.length; i++) {
        levels[i] = shapes[recipe * levels.length + i];
      }
      this.source = settings ? source(recipe) : null;
      this.channels = settings ? channels(recipe) : new RoaringBitmap();
      if (settings) {
        catalogue.groups(Facet.SOURCE).values().forEach(group -> anySource.or(group.recipes()));
        catalogue
            .groups(Facet.CHANNEL)
            .forEach(
                (name, group) -> {
                  if (ChannelName.of(name).channel() != null) {
                    anyChannel.or(group.recipes());
                  }
                });
      }
    }

    /** The square of a distance; anything not below the bound if it is not below. */
    double square(int key, double bound) {
      double square = 0;
      if (shape) {
        square = levels(key, bound);
        if (square >= bound) {
          return square;
        }
        square += brightness.square(key);
      }
      if (settings && square < bound) {
        square += settings(key);
      }
      return square;
    }

    /** The mean square of the levels' differences, or the part of it that reaches a bound. */
    private double levels(int key, double bound) {
      int from = key * levels.length;
      long sum = 0;
      double square = 0;
      for (int part = 0; part < levels.length && square < bound; part += PART) {
        int partial = 0;
        for (int i = part; i < part + PART; i++) {
          int difference = shapes[from + i] - levels[i];
          partial += difference * difference;
        }
        sum += partial;
        square = sum / SQUARES;
      }
      return square;
    }

    private double settings(int key) {
      double square = carrier.square(key) + decay.square(key);
      square += peak.square(key) + index.square(key);
      boolean sameSource = source == null ? !anySource.contains(key) : source.contains(key);
      square += sameSource ? 0 : OTHER_SOURCE_DB * OTHER_SOURCE_DB;
      boolean common = channels.isEmpty() ? !anyChannel.contains(key) : channels.contains(key);
      return square + (common ? 0 : OTHER_CHANNEL_DB * OTHER_CHANNEL_DB);
    }

    private @Nullable RoaringBitmap source(int key) {
      for (Catalogue.Group group : catalogue.groups(Facet.SOURCE).values()) {
        if (group.recipes().contains(key)) {
          return group.recipes();
        }
      }
      return null;
    }

    /** The recipes that share a gate channel with one. */
    private RoaringBitmap channels(int key) {
      RoaringBitmap sharing = new RoaringBitmap();
      for (Map.Entry<String, Catalogue.Group> group : catalogue.groups(Facet.CHANNEL).entrySet()) {
        if (ChannelName.of(group.getKey()).channel() != null
            && group.getValue().recipes().contains(key)) {
          sharing.or(group.getValue().recipes());
        }
      }
      return sharing;
    }
  }
}
