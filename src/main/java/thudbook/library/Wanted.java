package thudbook.library;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.UnaryOperator;

/**
 * What recipes are looked for: everything that is said must hold.
 *
 * @param words terms that must be found in the title, the line by ear, people, gear, notes or a tag
 * @param without terms that must be found in none of them
 * @param chosen of each facet, the values of which one must hold; all of them for tags
 * @param refused of each facet, values that must not hold
 * @param flags what must hold, or must not
 * @param made the day on which the patch was made
 * @param changed the day, in UTC, on which the recipe was saved last
 * @param limits where numbers must lie; a recipe without the number is out
 */
public record Wanted(
    List<Term> words,
    List<Term> without,
    Map<Facet, SortedSet<String>> chosen,
    Map<Facet, SortedSet<String>> refused,
    Map<Flag, Boolean> flags,
    Days made,
    Days changed,
    Map<Quantity, Limits> limits) {
  /** Every recipe. */
  public static final Wanted ALL =
      new Wanted(List.of(), List.of(), Map.of(), Map.of(), Map.of(), Days.ANY, Days.ANY, Map.of());

  public Wanted {
    words = List.copyOf(words);
    without = List.copyOf(without);
    chosen = sorted(chosen);
    refused = sorted(refused);
    flags = copy(new EnumMap<>(Flag.class), flags);
    limits = copy(new EnumMap<>(Quantity.class), limits);
  }

  private static Map<Facet, SortedSet<String>> sorted(Map<Facet, SortedSet<String>> values) {
    EnumMap<Facet, SortedSet<String>> copy = new EnumMap<>(Facet.class);
    values.forEach(
        (facet, set) -> {
          if (!set.isEmpty()) {
            copy.put(facet, Collections.unmodifiableSortedSet(new TreeSet<>(set)));
          }
        });
    return Collections.unmodifiableMap(copy);
  }

  private static <K extends Enum<K>, V> Map<K, V> copy(EnumMap<K, V> copy, Map<K, V> values) {
    copy.putAll(values);
    return Collections.unmodifiableMap(copy);
  }

  /** Whether nothing is asked, so that every recipe is found. */
  public boolean isAll() {
    return equals(ALL);
  }

  /** The values that are chosen of a facet. */
  public SortedSet<String> chosen(Facet facet) {
    return chosen.getOrDefault(facet, Collections.emptySortedSet());
  }

  /** The values that are refused of a facet. */
  public SortedSet<String> refused(Facet facet) {
    return refused.getOrDefault(facet, Collections.emptySortedSet());
  }

  /** The same, and a term more. */
  public Wanted with(Term term) {
    List<Term> more = new ArrayList<>(words);
    more.add(term);
    return new Wanted(more, without, chosen, refused, flags, made, changed, limits);
  }

  /** The same without what has a term. */
  public Wanted without(Term term) {
    List<Term> more = new ArrayList<>(without);
    more.add(term);
    return new Wanted(words, more, chosen, refused, flags, made, changed, limits);
  }

  /** The same, with a value of a facet chosen as well. */
  public Wanted choosing(Facet facet, String value) {
    return new Wanted(
        words,
        without,
        changed(chosen, facet, set -> plus(set, value)),
        refused,
        flags,
        made,
        changed,
        limits);
  }

  /** The same, with a value of a facet refused as well. */
  public Wanted refusing(Facet facet, String value) {
    return new Wanted(
        words,
        without,
        chosen,
        changed(refused, facet, set -> plus(set, value)),
        flags,
        made,
        changed,
        limits);
  }

  /** The same, with a flag that must hold or must not. */
  public Wanted with(Flag flag, boolean holds) {
    Map<Flag, Boolean> more = new EnumMap<>(Flag.class);
    more.putAll(flags);
    more.put(flag, holds);
    return new Wanted(words, without, chosen, refused, more, made, changed, limits);
  }

  /** The same, with a number within limits, and within those that were there before. */
  public Wanted with(Quantity quantity, Limits more) {
    Map<Quantity, Limits> all = new EnumMap<>(Quantity.class);
    all.putAll(limits);
    all.merge(quantity, more, Limits::and);
    return new Wanted(words, without, chosen, refused, flags, made, changed, all);
  }

  /** The same, made within these days too. */
  public Wanted madeIn(Days days) {
    return new Wanted(words, without, chosen, refused, flags, made.and(days), changed, limits);
  }

  /** The same, saved last within these days too. */
  public Wanted changedIn(Days days) {
    return new Wanted(words, without, chosen, refused, flags, made, changed.and(days), limits);
  }

  /** The same, with nothing asked about a value of a facet. */
  public Wanted dropping(Facet facet, String value) {
    return new Wanted(
        words,
        without,
        changed(chosen, facet, set -> minus(set, value)),
        changed(refused, facet, set -> minus(set, value)),
        flags,
        made,
        changed,
        limits);
  }

  /** The same, with nothing asked about a flag. */
  public Wanted dropping(Flag flag) {
    Map<Flag, Boolean> fewer = new EnumMap<>(Flag.class);
    fewer.putAll(flags);
    fewer.remove(flag);
    return new Wanted(words, without, chosen, refused, fewer, made, changed, limits);
  }

  /** The same, with nothing asked about a number. */
  public Wanted dropping(Quantity quantity) {
    Map<Quantity, Limits> fewer = new EnumMap<>(Quantity.class);
    fewer.putAll(limits);
    fewer.remove(quantity);
    return new Wanted(words, without, chosen, refused, flags, made, changed, fewer);
  }

  private static Map<Facet, SortedSet<String>> changed(
      Map<Facet, SortedSet<String>> values, Facet facet, UnaryOperator<SortedSet<String>> change) {
    Map<Facet, SortedSet<String>> changed = new EnumMap<>(Facet.class);
    changed.putAll(values);
    changed.put(facet, change.apply(values.getOrDefault(facet, Collections.emptySortedSet())));
    return changed;
  }

  private static SortedSet<String> plus(SortedSet<String> set, String value) {
    SortedSet<String> more = new TreeSet<>(set);
    more.add(value);
    return more;
  }

  private static SortedSet<String> minus(SortedSet<String> set, String value) {
    SortedSet<String> fewer = new TreeSet<>(set);
    fewer.remove(value);
    return fewer;
  }
}
