package thudbook.sessions;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import thudbook.changes.Thing;

/**
 * A day's recipes in playing order, as a document says.
 *
 * @param slug its name in addresses
 * @param date the day; null: not said
 * @param by who plans it; null: not said
 * @param entries at most {@value #MOST_ENTRIES}; those of one layer stand one behind the other
 * @param notes CommonMark
 */
public record Session(
    UUID id,
    String slug,
    String title,
    @Nullable LocalDate date,
    @Nullable String by,
    List<Entry> entries,
    String notes)
    implements Thing {
  public static final int MOST_ENTRIES = 100;

  public Session {
    entries = List.copyOf(entries);
    if (entries.size() > MOST_ENTRIES) {
      throw new IllegalArgumentException(
          "at most " + MOST_ENTRIES + " entries were expected, found " + entries.size());
    }
    int torn = tornLayer(entries);
    if (torn >= 0) {
      throw new IllegalArgumentException(
          "layer " + entries.get(torn).layer() + " goes on at entry " + torn);
    }
  }

  /**
   * A recipe in the session.
   *
   * @param recipe its slug
   * @param note what to remember about it on that day; null: nothing
   * @param layer entries with the same name here sound at once; null: it sounds alone
   * @param fixed it stays at its place when the order is changed
   * @param stays it stays patched while the next one is played: there is no time to pull it first
   */
  public record Entry(
      String recipe, @Nullable String note, @Nullable String layer, boolean fixed, boolean stays) {}

  /**
   * Recipes that are patched together: those of one layer, or one alone.
   *
   * @param first the index of its first entry
   */
  public record Step(int first, List<Entry> entries) {
    public Step {
      entries = List.copyOf(entries);
    }

    /** Whether it keeps its place. */
    public boolean fixed() {
      return entries.stream().anyMatch(Entry::fixed);
    }

    /** Whether something of it stays patched while the next step is played. */
    public boolean stays() {
      return entries.stream().anyMatch(Entry::stays);
    }
  }

  /** The index of the first entry whose layer was left before it; -1 if there is none. */
  public static int tornLayer(List<Entry> entries) {
    Set<String> left = new HashSet<>();
    String layer = null;
    for (int i = 0; i < entries.size(); i++) {
      String next = entries.get(i).layer();
      if (!Objects.equals(layer, next)) {
        if (layer != null) {
          left.add(layer);
        }
        if (next != null && left.contains(next)) {
          return i;
        }
        layer = next;
      }
    }
    return -1;
  }

  /** What is patched one after the other. */
  public List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= entries.size(); i++) {
      String layer = entries.get(from).layer();
      if (i == entries.size() || layer == null || !layer.equals(entries.get(i).layer())) {
        steps.add(new Step(from, entries.subList(from, i)));
        from = i;
      }
    }
    return steps;
  }

  /**
   * The same session in another order.
   *
   * @param order numbers of {@link #steps}, each once
   */
  public Session inOrder(List<Integer> order) {
    List<Step> steps = steps();
    if (order.size() != steps.size() || new HashSet<>(order).size() != order.size()) {
      throw new IllegalArgumentException(
          "an order of " + steps.size() + " steps was expected, found " + order);
    }
    return withEntries(order.stream().flatMap(i -> steps.get(i).entries().stream()).toList());
  }

  /** The same session with other entries. */
  public Session withEntries(List<Entry> others) {
    return new Session(id, slug, title, date, by, others, notes);
  }

  /** The same session under another name in addresses. */
  public Session withSlug(String other) {
    return new Session(id, other, title, date, by, entries, notes);
  }
}
