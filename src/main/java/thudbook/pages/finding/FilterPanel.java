package thudbook.pages.finding;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thudbook.access.Author;
import thudbook.library.Counts;
import thudbook.library.Days;
import thudbook.library.Facet;
import thudbook.library.Flag;
import thudbook.library.Library;
import thudbook.library.Limits;
import thudbook.library.Quantity;
import thudbook.library.Wanted;
import thudbook.library.typed.SearchAddress;
import thudbook.quantities.Fault;

/**
 * The filters beside the list. Which values stand there depends on the whole library and not on
 * what was found, so that nothing moves while somebody types; a count may be 0.
 *
 * @param moreTags whether there are tags that are not listed
 * @param hidden what the address asks and no field of the page shows
 */
public record FilterPanel(
    List<Value> tags,
    boolean moreTags,
    List<Group> groups,
    List<Choice> flags,
    List<Dates> dates,
    List<RangeFilter> ranges,
    List<RangeFilter> moreRanges,
    List<Hidden> hidden) {
  private static final int MOST_TAGS = 30;
  private static final int MOST_VALUES = 100;

  /** Of more recipes the numbers that nobody asks about are not drawn: it would take too long. */
  private static final int MOST_DRAWN_WHOLE = 100_000;

  private static final List<Quantity> MAIN =
      List.of(
          Quantity.HOLD,
          Quantity.RELEASE_40,
          Quantity.PEAK_DB,
          Quantity.THUMP_PEAK,
          Quantity.BRIGHTNESS_PEAK,
          Quantity.ATTACK,
          Quantity.INDEX,
          Quantity.PEAK,
          Quantity.DECAY,
          Quantity.CARRIER);

  /** A value of a facet. */
  public record Value(
      String key, String label, String id, int recipes, boolean chosen, boolean refused) {}

  /** A facet of which any of some values may be asked. */
  public record Group(String name, String title, List<Value> values) {
    /** Whether one of them is chosen, so that the group is open at once. */
    public boolean isUsed() {
      return values.stream().anyMatch(Value::chosen);
    }
  }

  /** Something to tick. */
  public record Choice(String name, String value, String label, int recipes, boolean chosen) {}

  /** A span of days. */
  public record Dates(String title, RangeFilter.Field from, RangeFilter.Field to) {}

  /** A field that is sent and not shown. */
  public record Hidden(String name, String value) {}

  /** The numbers of which the panel of a library shows histograms. */
  static Collection<Quantity> drawn(Library library, Wanted wanted) {
    if (library.catalogue().size() <= MOST_DRAWN_WHOLE) {
      return List.of(Quantity.values());
    }
    Set<Quantity> drawn = new LinkedHashSet<>(MAIN);
    drawn.addAll(wanted.limits().keySet());
    return drawn;
  }

  /**
   * The panel of a search.
   *
   * @param typed the parameters as they came
   * @param author whose favourites count
   */
  static FilterPanel of(
      Library library,
      SearchAddress.Read asked,
      Wanted wanted,
      Map<String, List<String>> typed,
      FilterWords words,
      Author author) {
    Counts counts = library.search().counts(wanted, author, drawn(library, wanted));
    Reader reader = new Reader(library, asked, wanted, typed, words, counts);
    Wanted filters = asked.address().filters();
    List<RangeFilter> main = new ArrayList<>();
    List<RangeFilter> more = new ArrayList<>();
    for (Quantity quantity : MAIN) {
      main.add(reader.range(quantity));
    }
    for (Quantity quantity : Quantity.values()) {
      if (!MAIN.contains(quantity)) {
        more.add(reader.range(quantity));
      }
    }
    return new FilterPanel(
        reader.tags(),
        library.catalogue().labels(Facet.TAG).size() > MOST_TAGS,
        List.of(
            reader.group(Facet.SOURCE, "Source"),
            reader.group(Facet.CHANNEL, "Low-pass gate and channel"),
            reader.group(Facet.REACH, "Reach"),
            reader.group(Facet.BY, "By"),
            reader.group(Facet.RATING, "Rating")),
        List.of(
            reader.flag(Flag.FAVOURITE), reader.flag(Flag.PHOTOS), reader.flag(Flag.INCOMPLETE)),
        List.of(
            reader.dates("made", "Made", filters.made()),
            reader.dates("changed", "Saved last", filters.changed())),
        main,
        more,
        reader.hidden());
  }

  /** Whether more numbers are open at once. */
  public boolean isMoreUsed() {
    return moreRanges.stream().anyMatch(RangeFilter::isUsed);
  }

  /** Whether the dates are open at once. */
  public boolean areDatesUsed() {
    return dates.stream().anyMatch(d -> !d.from().text().isEmpty() || !d.to().text().isEmpty());
  }

  private static final class Reader {
    private final Library library;
    private final Wanted filters;
    private final Wanted wanted;
    private final Counts counts;
    private final Map<String, List<String>> typed;
    private final Map<String, String> faults = new HashMap<>();
    private final FilterWords words;

    Reader(
        Library library,
        SearchAddress.Read asked,
        Wanted wanted,
        Map<String, List<String>> typed,
        FilterWords words,
        Counts counts) {
      this.library = library;
      this.filters = asked.address().filters();
      this.wanted = wanted;
      this.typed = typed;
      this.words = words;
      this.counts = counts;
      for (Fault fault : asked.faults()) {
        faults.put(
            fault.place(), "Found " + fault.found() + ", expected " + fault.expected() + ".");
      }
    }

    private List<Value> values(Facet facet, int most) {
      Map<String, Integer> left = new HashMap<>();
      counts
          .values()
          .getOrDefault(facet, List.of())
          .forEach(value -> left.put(value.key(), value.recipes()));
      Set<String> keys = new LinkedHashSet<>(filters.chosen(facet));
      if (facet == Facet.TAG) {
        keys.addAll(filters.refused(facet));
      }
      library.catalogue().mostUsed(facet, most).forEach(value -> keys.add(value.key()));
      return keys.stream()
          .map(
              key ->
                  new Value(
                      key,
                      words.value(facet, key),
                      "f-" + facet.key() + "-" + Integer.toHexString(key.hashCode()),
                      left.getOrDefault(key, 0),
                      filters.chosen(facet).contains(key),
                      filters.refused(facet).contains(key)))
          .toList();
    }

    List<Value> tags() {
      return values(Facet.TAG, MOST_TAGS).stream()
          .sorted(Comparator.comparing(value -> value.label().toLowerCase(Locale.ROOT)))
          .toList();
    }

    Group group(Facet facet, String title) {
      Comparator<Value> order =
          facet == Facet.RATING
              ? Comparator.comparing(Value::key).reversed()
              : Comparator.comparing(value -> value.label().toLowerCase(Locale.ROOT));
      return new Group(
          facet.key(), title, values(facet, MOST_VALUES).stream().sorted(order).toList());
    }

    Choice flag(Flag flag) {
      Boolean asked = filters.flags().get(flag);
      boolean holds = asked == null || asked;
      String label = FilterWords.asked(flag, holds);
      int with = counts.flags().getOrDefault(flag, 0);
      return new Choice(
          flag.key(),
          holds ? "yes" : "no",
          label.substring(0, 1).toUpperCase(Locale.ROOT) + label.substring(1),
          holds ? with : counts.total(),
          asked != null);
    }

    Dates dates(String key, String title, Days days) {
      return new Dates(
          title, field(key + ".from", day(days.from())), field(key + ".to", day(days.to())));
    }

    RangeFilter range(Quantity quantity) {
      Limits limits = filters.limits().get(quantity);
      Double from = limits == null ? null : limits.from();
      Double to = limits == null ? null : limits.to();
      return RangeFilter.of(
          quantity,
          wanted.limits().get(quantity),
          field(quantity.key() + ".from", from == null ? "" : quantity.dimension().write(from)),
          field(quantity.key() + ".to", to == null ? "" : quantity.dimension().write(to)),
          counts.histograms().getOrDefault(quantity, List.of()));
    }

    /** What was read, or what was typed where it was not understood. */
    private RangeFilter.Field field(String name, String read) {
      String fault = faults.getOrDefault(name, "");
      List<String> came = typed.getOrDefault(name, List.of());
      String text = fault.isEmpty() || came.isEmpty() ? read : came.get(came.size() - 1);
      return new RangeFilter.Field(name, text, fault);
    }

    private static String day(@Nullable LocalDate day) {
      return day == null ? "" : day.toString();
    }

    List<Hidden> hidden() {
      List<Hidden> hidden = new ArrayList<>();
      filters
          .refused()
          .forEach(
              (facet, values) -> {
                if (facet != Facet.TAG) {
                  values.forEach(value -> hidden.add(new Hidden("not." + facet.key(), value)));
                }
              });
      return hidden;
    }
  }
}
