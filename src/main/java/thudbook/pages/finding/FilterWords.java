package thudbook.pages.finding;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.library.Catalogue;
import thudbook.library.ChannelName;
import thudbook.library.Days;
import thudbook.library.Facet;
import thudbook.library.Flag;
import thudbook.library.Library;
import thudbook.library.Limits;
import thudbook.library.Quantity;
import thudbook.predictions.Reach;
import thudbook.wording.QuantityWords;
import thudbook.wording.ReachWords;
import thudbook.wording.Reading;
import thudbook.wording.SourceWords;

/** What filters and their values are called. */
final class FilterWords {
  private final Map<Facet, Map<String, String>> labels = new EnumMap<>(Facet.class);
  private final Map<String, String> gates = new HashMap<>();

  FilterWords(Library library, Things<Gate> studio) {
    labels.put(Facet.TAG, library.catalogue().labels(Facet.TAG));
    labels.put(Facet.BY, library.catalogue().labels(Facet.BY));
    studio.all().forEach(stored -> gates.put(stored.thing().slug(), stored.thing().title()));
  }

  /** A value of a facet. */
  String value(Facet facet, String key) {
    return switch (facet) {
      case SOURCE -> SourceWords.kind(key);
      case CHANNEL -> channel(ChannelName.of(key));
      case REACH ->
          Arrays.stream(Reach.values())
              .filter(reach -> Catalogue.word(reach).equals(key))
              .findFirst()
              .map(ReachWords::brief)
              .orElse(key);
      case TAG, BY -> labels.getOrDefault(facet, Map.of()).getOrDefault(key, key);
      case RATING -> key + " of 5";
    };
  }

  private String channel(ChannelName name) {
    String gate = gates.getOrDefault(name.gate(), name.gate());
    return name.channel() == null ? gate : gate + ", " + name.channel();
  }

  /** What a facet's value is asked for as, such as "by Oona". */
  String asked(Facet facet, String key) {
    String value = value(facet, key);
    return switch (facet) {
      case TAG -> "tagged " + value;
      case CHANNEL -> "on " + value;
      case BY -> "by " + value;
      case RATING -> "rated " + value;
      case SOURCE, REACH -> value;
    };
  }

  /** A flag that must hold, or must not. */
  static String asked(Flag flag, boolean holds) {
    return switch (flag) {
      case FAVOURITE -> holds ? "my favourites" : "not my favourites";
      case PHOTOS -> holds ? "with photos" : "without photos";
      case INCOMPLETE -> holds ? "incomplete" : "complete";
    };
  }

  /** A span of a number. */
  static String asked(Quantity quantity, Limits limits) {
    String name = QuantityWords.name(quantity);
    String from = limits.from() == null ? null : QuantityWords.said(quantity, limits.from());
    String to = limits.to() == null ? null : QuantityWords.said(quantity, limits.to());
    return lower(name) + span(from, to, "at least", "at most");
  }

  /** A span of days. */
  static String asked(String what, Days days) {
    return what + span(day(days.from()), day(days.to()), "since", "until");
  }

  private static @Nullable String day(@Nullable LocalDate day) {
    return day == null ? null : Reading.day(day);
  }

  private static String span(
      @Nullable String from, @Nullable String to, String least, String most) {
    if (from != null && to != null) {
      return from.equals(to) ? " " + from : " " + from + " to " + to;
    }
    return from != null ? " " + least + " " + from : " " + most + " " + to;
  }

  /** A name within a sentence. */
  static String lower(String name) {
    return name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1);
  }
}
