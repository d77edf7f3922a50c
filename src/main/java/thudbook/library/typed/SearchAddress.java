package thudbook.library.typed;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.StringJoiner;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import thudbook.library.Days;
import thudbook.library.Facet;
import thudbook.library.Flag;
import thudbook.library.Limits;
import thudbook.library.Ordering;
import thudbook.library.Quantity;
import thudbook.library.Vocabulary;
import thudbook.library.Wanted;
import thudbook.library.Words;
import thudbook.quantities.Dimension;
import thudbook.quantities.Fault;
import thudbook.quantities.Range;
import thudbook.quantities.Reading;

/**
 * The state of a search as the query of an address: {@code q=kick&tag=dry&on=keeper-twin/quick&
 * hold.from=80 ms&order=-hold}. Pages, the JSON routes and shelves share it.
 *
 * @param typed what was typed, as it was
 * @param filters what is asked beside it
 * @param order null: by relevance where words are asked, else newest first
 */
public record SearchAddress(String typed, Wanted filters, @Nullable Ordering order) {
  public SearchAddress {
    typed = typed.strip();
  }

  /** Everything, newest first. */
  public static final SearchAddress ALL = new SearchAddress("", Wanted.ALL, null);

  private static final String TYPED = "q";
  private static final String ORDER = "order";
  private static final String FROM = ".from";
  private static final String TO = ".to";
  private static final String NOT = "not.";
  private static final double WIDE = 1e6;

  /**
   * What was read of an address.
   *
   * @param faults what is not understood; the rest holds
   */
  public record Read(SearchAddress address, List<Fault> faults) {
    public Read {
      faults = List.copyOf(faults);
    }
  }

  /** Reads the parameters of a query; empty values and names that are none of ours say nothing. */
  public static Read read(Map<String, ? extends Collection<String>> parameters) {
    Reader reader = new Reader();
    parameters.forEach(
        (name, values) ->
            values.forEach(
                value -> {
                  if (!value.isBlank()) {
                    reader.read(name, value.strip());
                  }
                }));
    return new Read(
        new SearchAddress(
            parameters.containsKey(TYPED) ? String.join(" ", parameters.get(TYPED)).strip() : "",
            reader.wanted,
            reader.order),
        reader.faults);
  }

  /** Reads the query of an address, with or without its question mark. */
  public static Read ofQuery(String query) {
    Map<String, List<String>> parameters = new LinkedHashMap<>();
    String plain = query.startsWith("?") ? query.substring(1) : query;
    for (String pair : plain.split("&", -1)) {
      int equals = pair.indexOf('=');
      if (equals > 0) {
        parameters
            .computeIfAbsent(decoded(pair.substring(0, equals)), name -> new ArrayList<>())
            .add(decoded(pair.substring(equals + 1)));
      }
    }
    return read(parameters);
  }

  /**
   * What of a query says nothing: names that are none of ours, and values that are empty. A page
   * passes over them; an act on all that is found must not, since it would be done to more.
   */
  public static List<String> saysNothing(String query) {
    List<String> strange = new ArrayList<>();
    String plain = query.startsWith("?") ? query.substring(1) : query;
    for (String pair : plain.split("&", -1)) {
      int equals = Math.max(0, pair.indexOf('='));
      String name = decoded(pair.substring(0, equals));
      if (!isOurs(name) || decoded(pair.substring(Math.min(pair.length(), equals + 1))).isBlank()) {
        strange.add(pair);
      }
    }
    return strange;
  }

  private static boolean isOurs(String name) {
    String facet = name.startsWith(NOT) ? name.substring(NOT.length()) : name;
    if (name.equals(TYPED) || name.equals(ORDER) || Facet.ofKey(facet).isPresent()) {
      return true;
    }
    for (Flag flag : Flag.values()) {
      if (flag.key().equals(name)) {
        return true;
      }
    }
    String what =
        name.endsWith(FROM)
            ? name.substring(0, name.length() - FROM.length())
            : name.endsWith(TO) ? name.substring(0, name.length() - TO.length()) : "";
    return what.equals("made") || what.equals("changed") || Quantity.ofKey(what).isPresent();
  }

  private static String decoded(String text) {
    try {
      return URLDecoder.decode(text, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      return text;
    }
  }

  /** What is wanted altogether, with what is to be said of the typed part. */
  public Typed wanted(Supplier<Vocabulary> vocabulary) {
    return typed.isEmpty()
        ? new Typed(filters, List.of(), List.of())
        : TypedSearch.read(typed, vocabulary.get(), filters);
  }

  /** The order that counts. */
  public Ordering ordering(Wanted wanted) {
    if (order != null) {
      return order;
    }
    return wanted.words().isEmpty() ? Ordering.NEWEST : Ordering.RELEVANCE;
  }

  /** The same search in another order; null: the usual one. */
  public SearchAddress in(@Nullable Ordering other) {
    return new SearchAddress(typed, filters, other);
  }

  /** The same search with other filters. */
  public SearchAddress with(Wanted others) {
    return new SearchAddress(typed, others, order);
  }

  /** The query of the address, without a question mark; empty: everything, newest first. */
  public String query() {
    Writer writer = new Writer();
    writer.put(TYPED, typed);
    for (Facet facet : Facet.values()) {
      filters.chosen(facet).forEach(value -> writer.put(facet.key(), value));
    }
    for (Facet facet : Facet.values()) {
      filters.refused(facet).forEach(value -> writer.put(NOT + facet.key(), value));
    }
    filters.flags().forEach((flag, holds) -> writer.put(flag.key(), holds ? "yes" : "no"));
    writer.put("made", filters.made());
    writer.put("changed", filters.changed());
    filters
        .limits()
        .forEach(
            (quantity, limits) -> {
              Dimension dimension = quantity.dimension();
              if (limits.from() != null) {
                writer.put(quantity.key() + FROM, dimension.write(limits.from()));
              }
              if (limits.to() != null) {
                writer.put(quantity.key() + TO, dimension.write(limits.to()));
              }
            });
    if (order != null) {
      writer.put(ORDER, order.key());
    }
    return writer.query.toString();
  }

  private static final class Writer {
    private final StringJoiner query = new StringJoiner("&");

    void put(String name, String value) {
      if (!value.isEmpty()) {
        query.add(name + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8));
      }
    }

    void put(String name, Days days) {
      put(name + FROM, days.from() == null ? "" : days.from().toString());
      put(name + TO, days.to() == null ? "" : days.to().toString());
    }
  }

  private static final class Reader {
    private Wanted wanted = Wanted.ALL;
    private @Nullable Ordering order;
    private final List<Fault> faults = new ArrayList<>();

    void read(String name, String value) {
      boolean refused = name.startsWith(NOT);
      Facet facet = Facet.ofKey(refused ? name.substring(NOT.length()) : name).orElse(null);
      if (facet != null) {
        String key = facet == Facet.CHANNEL ? value : Words.fold(value);
        wanted = refused ? wanted.refusing(facet, key) : wanted.choosing(facet, key);
        return;
      }
      for (Flag flag : Flag.values()) {
        if (flag.key().equals(name)) {
          flag(flag, value);
          return;
        }
      }
      if (name.equals(ORDER)) {
        order = Ordering.ofKey(value).orElse(null);
        if (order == null) {
          fault(name, "unknown-word", value, "newest, title, relevance, last-used or a number");
        }
      } else if (name.endsWith(FROM)) {
        end(name.substring(0, name.length() - FROM.length()), name, value, true);
      } else if (name.endsWith(TO)) {
        end(name.substring(0, name.length() - TO.length()), name, value, false);
      }
    }

    private void flag(Flag flag, String value) {
      switch (value.toLowerCase(Locale.ROOT)) {
        case "yes" -> wanted = wanted.with(flag, true);
        case "no" -> wanted = wanted.with(flag, false);
        default -> fault(flag.key(), "unknown-word", value, "yes or no");
      }
    }

    private void end(String what, String name, String value, boolean from) {
      if (what.equals("made") || what.equals("changed")) {
        Days days = TypedDate.read(value);
        if (days == null) {
          fault(name, "not-a-date", value, "a date such as 2026-10-02");
          return;
        }
        LocalDate first = from ? days.from() : null;
        Days span = new Days(first, from ? null : days.to());
        wanted = what.equals("made") ? wanted.madeIn(span) : wanted.changedIn(span);
        return;
      }
      Quantity quantity = Quantity.ofKey(what).orElse(null);
      if (quantity == null) {
        return;
      }
      Reading read = Range.of(quantity.dimension(), -WIDE, WIDE).read(value);
      if (read instanceof Reading.Value number) {
        Limits limits =
            from ? Limits.between(number.si(), null) : Limits.between(null, number.si());
        wanted = wanted.with(quantity, limits);
      } else {
        Reading.Refused refused = (Reading.Refused) read;
        String expected =
            refused.code().equals("decimal-comma") || refused.code().equals("unit-missing")
                ? refused.expected()
                : "a number such as " + quantity.dimension().say(1);
        fault(name, refused.code(), value, expected);
      }
    }

    private void fault(String name, String code, String value, String expected) {
      String found = value.length() > 40 ? value.substring(0, 40) + "…" : value;
      faults.add(
          new Fault(
              name,
              0,
              code,
              found,
              expected,
              name + ": found " + found + ", expected " + expected + "."));
    }
  }
}
