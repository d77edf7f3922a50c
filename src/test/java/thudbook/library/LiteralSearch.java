package thudbook.library;

import java.text.Normalizer;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import thudbook.library.WordIndex.Place;
import thudbook.recipes.EnvelopeEntry;
import thudbook.recipes.Recipe;
import thudbook.recipes.SourceEntry;

/** A search read literally: every recipe is looked at, one after the other. */
final class LiteralSearch {
  private final List<One> all;

  LiteralSearch(List<One> all) {
    this.all = all;
  }

  /** A recipe as it is stored, with the row that the list shows of it. */
  static final class One {
    final Recipe recipe;
    final RecipeList.Row row;
    final Map<Place, List<List<String>>> words = new EnumMap<>(Place.class);
    final List<List<String>> tagWords = new ArrayList<>();
    final Set<String> tags = new HashSet<>();
    private final Map<Facet, Set<String>> values = new EnumMap<>(Facet.class);

    One(Recipe recipe, RecipeList.Row row) {
      this.recipe = recipe;
      this.row = row;
      RecipeFacts.texts(recipe)
          .forEach((place, texts) -> words.put(place, texts.stream().map(One::words).toList()));
      for (String tag : recipe.tags()) {
        tags.add(folded(tag));
        tagWords.add(words(tag));
      }
      for (Facet facet : Facet.values()) {
        values.put(facet, read(facet));
      }
    }

    /** Runs of letters and digits, without case and accents, by the platform's own classes. */
    static List<String> words(String text) {
      List<String> words = new ArrayList<>();
      StringBuilder word = new StringBuilder();
      folded(text)
          .codePoints()
          .forEach(
              c -> {
                if (Character.isLetterOrDigit(c)) {
                  word.appendCodePoint(c);
                } else if (!word.isEmpty()) {
                  words.add(word.toString());
                  word.setLength(0);
                }
              });
      if (!word.isEmpty()) {
        words.add(word.toString());
      }
      return words;
    }

    static String folded(String text) {
      return Normalizer.normalize(text, Normalizer.Form.NFKD)
          .replaceAll("\\p{Mn}", "")
          .toLowerCase(Locale.ROOT);
    }

    boolean has(Term term, Place place) {
      return words.get(place).stream().anyMatch(term::isIn);
    }

    boolean hasTag(Term term) {
      return tagWords.stream().anyMatch(term::isIn);
    }

    boolean has(Term term) {
      return hasTag(term) || words.keySet().stream().anyMatch(place -> has(term, place));
    }

    double number(Quantity quantity) {
      if (quantity.metric().isPresent()) {
        return row.metrics() == null
            ? Double.NaN
            : row.metrics().get(quantity.metric().get()).orElse(Double.NaN);
      }
      SourceEntry source = recipe.source();
      EnvelopeEntry envelope = recipe.envelope();
      Double value =
          switch (quantity) {
            case INDEX ->
                source instanceof SourceEntry.FrequencyModulation pair ? pair.index() : null;
            case CARRIER ->
                source instanceof SourceEntry.FrequencyModulation pair
                    ? (Double) pair.carrier().hertz()
                    : source instanceof SourceEntry.Oscillator one
                        ? (Double) one.frequency().hertz()
                        : null;
            case PEAK ->
                envelope instanceof EnvelopeEntry.AttackHoldDecay decaying
                    ? decaying.peakVolts()
                    : envelope instanceof EnvelopeEntry.Pulse pulse ? pulse.peakVolts() : null;
            case DECAY ->
                envelope instanceof EnvelopeEntry.AttackHoldDecay decaying
                    ? decaying.decay().seconds()
                    : null;
            default -> throw new IllegalArgumentException(quantity.key());
          };
      return value == null ? Double.NaN : value;
    }

    Set<String> values(Facet facet) {
      return values.get(facet);
    }

    private Set<String> read(Facet facet) {
      Set<String> values = new TreeSet<>();
      switch (facet) {
        case TAG -> values.addAll(tags);
        case SOURCE -> {
          if (recipe.source() != null) {
            values.add(
                recipe.source() instanceof SourceEntry.Noise
                    ? "noise"
                    : recipe.source() instanceof SourceEntry.Oscillator ? "oscillator" : "fm");
          }
        }
        case CHANNEL ->
            recipe
                .stages()
                .forEach(
                    stage -> {
                      if (stage.gate() != null) {
                        values.add(stage.gate());
                        if (stage.channel() != null) {
                          values.add(stage.gate() + "/" + stage.channel());
                        }
                      }
                    });
        case REACH -> {
          if (row.metrics() != null) {
            values.add(row.metrics().reach().name().toLowerCase(Locale.ROOT).replace('_', '-'));
          }
        }
        case BY -> {
          if (recipe.by() != null) {
            values.add(folded(recipe.by()));
          }
        }
        case RATING -> {
          if (recipe.rating() != null) {
            values.add(String.valueOf(recipe.rating()));
          }
        }
      }
      return values;
    }

    boolean holds(Flag flag) {
      return switch (flag) {
        case FAVOURITE -> row.favourite();
        case PHOTOS -> !recipe.photos().isEmpty();
        case INCOMPLETE -> row.metrics() == null;
      };
    }
  }

  /** What a search asks, one thing after the other, by what it is about. */
  private static Map<Object, Predicate<One>> parts(Wanted wanted) {
    Map<Object, Predicate<One>> parts = new LinkedHashMap<>();
    wanted
        .chosen()
        .forEach(
            (facet, values) ->
                parts.put(
                    facet,
                    one -> {
                      Set<String> own = one.values(facet);
                      return facet == Facet.TAG
                          ? own.containsAll(values)
                          : values.stream().anyMatch(own::contains);
                    }));
    wanted
        .refused()
        .forEach(
            (facet, values) ->
                parts.put(
                    "not " + facet, one -> values.stream().noneMatch(one.values(facet)::contains)));
    wanted.flags().forEach((flag, holds) -> parts.put(flag, one -> one.holds(flag) == holds));
    parts.put(
        "changed",
        one -> wanted.changed().admit(LocalDate.ofInstant(one.row.changedAt(), ZoneOffset.UTC)));
    parts.put(
        "made",
        one ->
            wanted.made().isAny()
                || (one.recipe.made() != null && wanted.made().admit(one.recipe.made())));
    wanted
        .limits()
        .forEach(
            (quantity, limits) -> parts.put(quantity, one -> within(limits, one.number(quantity))));
    // The dearest last.
    parts.put(
        "words",
        one ->
            wanted.words().stream().allMatch(one::has)
                && wanted.without().stream().noneMatch(one::has));
    return parts;
  }

  private static boolean within(Limits limits, double value) {
    if (Double.isNaN(value)) {
      return false;
    }
    Double from = limits.from();
    Double to = limits.to();
    return (from == null || value > from || (limits.fromItself() && value == from))
        && (to == null || value < to || (limits.toItself() && value == to));
  }

  /** Everything that is wanted, in order. */
  List<Integer> find(Wanted wanted, Ordering ordering, Function<One, @Nullable Long> used) {
    List<Predicate<One>> parts = List.copyOf(parts(wanted).values());
    return all.parallelStream()
        .filter(one -> parts.stream().allMatch(part -> part.test(one)))
        .map(one -> ranked(one, wanted, ordering, used))
        .sorted(order(ordering))
        .map(ranked -> ranked.one().row.key())
        .toList();
  }

  /** A recipe with what decides about its place; NaN: it has none. */
  private record Ranked(One one, double number, String title) {}

  private static Ranked ranked(
      One one, Wanted wanted, Ordering ordering, Function<One, @Nullable Long> used) {
    Long at = used.apply(one);
    double number =
        switch (ordering.by()) {
          case NEWEST, TITLE -> 0;
          case RELEVANCE -> relevance(one, wanted);
          case LAST_USED -> at == null ? Double.NaN : at;
          case QUANTITY -> one.number(ordering.quantity()) + 0.0;
        };
    return new Ranked(
        one, number, ordering.by() == Ordering.By.TITLE ? One.folded(one.recipe.title()) : "");
  }

  private static Comparator<Ranked> order(Ordering ordering) {
    boolean largestFirst =
        ordering.descending()
            || ordering.by() == Ordering.By.RELEVANCE
            || ordering.by() == Ordering.By.LAST_USED;
    Comparator<Ranked> rising =
        Comparator.comparingDouble(ranked -> Double.isNaN(ranked.number()) ? 0 : ranked.number());
    return Comparator.comparing((Ranked ranked) -> Double.isNaN(ranked.number()))
        .thenComparing(largestFirst ? rising.reversed() : rising)
        .thenComparing(Ranked::title)
        .thenComparing(ranked -> ranked.one().row.changedAt(), Comparator.reverseOrder())
        .thenComparing(ranked -> ranked.one().row.key(), Comparator.reverseOrder());
  }

  private static double relevance(One one, Wanted wanted) {
    int sum = 0;
    for (Term term : wanted.words()) {
      if (one.has(term, Place.TITLE)) {
        sum += 8;
      } else if (one.hasTag(term)) {
        sum += 4;
      } else if (one.has(term, Place.HEARD)) {
        sum += 2;
      } else {
        sum += 1;
      }
    }
    return sum;
  }

  /** What would remain. */
  Counts counts(Wanted wanted, List<Quantity> quantities) {
    Map<Object, Predicate<One>> parts = parts(wanted);
    Map<Facet, Map<String, Integer>> values = new EnumMap<>(Facet.class);
    Map<Flag, Integer> flags = new EnumMap<>(Flag.class);
    Map<Quantity, int[]> bars = new EnumMap<>(Quantity.class);
    int total = 0;
    for (Facet facet : Facet.values()) {
      values.put(facet, new TreeMap<>());
    }
    for (Flag flag : Flag.values()) {
      flags.put(flag, 0);
    }
    quantities.forEach(quantity -> bars.put(quantity, new int[Bins.COUNT]));
    for (One one : all) {
      Object only = null;
      int failing = 0;
      for (Map.Entry<Object, Predicate<One>> part : parts.entrySet()) {
        if (failing < 2 && !part.getValue().test(one)) {
          failing++;
          only = part.getKey();
        }
      }
      if (failing > 1) {
        continue;
      }
      total += only == null ? 1 : 0;
      for (Facet facet : Facet.values()) {
        if (only == null || (only.equals(facet) && facet != Facet.TAG)) {
          one.values(facet).forEach(value -> values.get(facet).merge(value, 1, Integer::sum));
        }
      }
      for (Flag flag : Flag.values()) {
        if ((only == null || only.equals(flag)) && one.holds(flag)) {
          flags.merge(flag, 1, Integer::sum);
        }
      }
      for (Quantity quantity : quantities) {
        double value = one.number(quantity);
        if ((only == null || only.equals(quantity)) && !Double.isNaN(value)) {
          bars.get(quantity)[bar(quantity.bins(), value)]++;
        }
      }
    }
    Map<Facet, List<Counts.Value>> lists = new EnumMap<>(Facet.class);
    values.forEach(
        (facet, counted) -> {
          List<Counts.Value> list = new ArrayList<>();
          counted.forEach((value, count) -> list.add(new Counts.Value(value, "", count)));
          list.sort(
              Comparator.comparing(Counts.Value::recipes, Comparator.reverseOrder())
                  .thenComparing(Counts.Value::key));
          lists.put(facet, list);
        });
    Map<Quantity, List<Integer>> histograms = new EnumMap<>(Quantity.class);
    bars.forEach(
        (quantity, counts) -> histograms.put(quantity, Arrays.stream(counts).boxed().toList()));
    return new Counts(total, lists, flags, histograms);
  }

  /** The last bar that begins at or below a value. */
  private static int bar(Bins bins, double value) {
    int bar = 0;
    while (bar + 1 < Bins.COUNT && bins.edge(bar + 1) <= value) {
      bar++;
    }
    return bar;
  }
}
