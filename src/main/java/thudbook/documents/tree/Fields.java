package thudbook.documents.tree;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Range;

/**
 * The keys of one part of a document, asked for one by one; what nobody asked for is unknown. A
 * null is given where a key is absent or its value refused: faults tell the two apart.
 */
public final class Fields {
  private final Place place;
  private final Map<String, Tree> entries;
  private final boolean real;
  private final Faults faults;
  private final Set<String> asked = new LinkedHashSet<>();

  private Fields(Place place, Map<String, Tree> entries, boolean real, Faults faults) {
    this.place = place;
    this.entries = entries;
    this.real = real;
    this.faults = faults;
  }

  /** The keys of a tree; if it has no keys, that is the one fault: none is then missed. */
  public static Fields of(Tree tree, Faults faults) {
    if (tree instanceof Tree.Mapping mapping) {
      return new Fields(mapping.place(), mapping.entries(), true, faults);
    }
    faults.add(tree, "wrong-type", "keys with values");
    return new Fields(tree.place(), Map.of(), false, faults);
  }

  public Place place() {
    return place;
  }

  /** The place of a key, there or not. */
  public Place placeOf(String key) {
    Tree tree = entries.get(key);
    return tree == null ? place.key(key, place.line()) : tree.place();
  }

  /** What stands at a key. */
  public @Nullable Tree get(String key) {
    asked.add(key);
    Tree tree = entries.get(key);
    return tree instanceof Tree.Nothing ? null : tree;
  }

  /** What stands at a key that must be there. */
  public @Nullable Tree need(String key, String expected) {
    Tree tree = get(key);
    if (tree == null && real) {
      faults.missing(placeOf(key), expected);
    }
    return tree;
  }

  public @Nullable Double quantity(String key, Range range) {
    Tree tree = get(key);
    return tree == null ? null : Values.quantity(tree, range, faults);
  }

  /** A quantity with a default, which also stands in where the value is refused. */
  public double quantity(String key, Range range, double otherwise) {
    Double value = quantity(key, range);
    return value == null ? otherwise : value;
  }

  public @Nullable Double needQuantity(String key, Range range) {
    Tree tree = get(key);
    return tree == null ? missing(key, range) : Values.quantity(tree, range, faults);
  }

  private @Nullable Double missing(String key, Range range) {
    need(key, range.words());
    return null;
  }

  public @Nullable Integer whole(String key, int least, int most) {
    Tree tree = get(key);
    return tree == null ? null : Values.whole(tree, least, most, faults);
  }

  public @Nullable String line(String key, int longest) {
    Tree tree = get(key);
    return tree == null ? null : Values.line(tree, longest, faults);
  }

  public @Nullable String needLine(String key, int longest) {
    int before = faults.count();
    String line = line(key, longest);
    if (line == null && real && faults.count() == before) {
      faults.missing(placeOf(key), "text of 1 to " + longest + " characters in one line");
    }
    return line;
  }

  <T extends Enum<T>> @Nullable T choice(String key, Choice<T> choice) {
    Tree tree = get(key);
    return tree == null ? null : choice.read(tree, faults);
  }

  /** A choice with a default, which also stands in where the value is refused. */
  public <T extends Enum<T>> T choice(String key, Choice<T> choice, T otherwise) {
    T value = choice(key, choice);
    return value == null ? otherwise : value;
  }

  /** The items of a list; none where it is absent or refused. */
  public List<Tree> items(String key, int most) {
    Tree tree = get(key);
    return tree == null ? List.of() : itemsOf(tree, 0, most, faults);
  }

  /** The items of a list of so many; none, with a fault, where something else stands. */
  public static List<Tree> itemsOf(Tree tree, int least, int most, Faults faults) {
    String expected = "a list of " + least + " to " + most;
    if (least == 0) {
      expected = "a list of at most " + most;
    } else if (least == most) {
      expected = "a list of " + most;
    }
    if (!(tree instanceof Tree.Sequence sequence)) {
      faults.add(tree, "wrong-type", expected);
      return List.of();
    }
    int size = sequence.items().size();
    if (size < least || size > most) {
      String found = size == 0 ? "an empty list" : "a list of " + size;
      faults.add(tree.place(), "wrong-number", found, expected);
      return List.of();
    }
    return sequence.items();
  }

  /** Refuses every key that was not asked for. */
  public void done() {
    for (Map.Entry<String, Tree> entry : entries.entrySet()) {
      String key = entry.getKey();
      if (asked.contains(key)) {
        continue;
      }
      Place at = entry.getValue().place();
      String near = Spelling.nearest(key, asked);
      if (near == null) {
        String known = Choice.expected(asked);
        faults.say(at, "unknown-key", key, known, "unknown key, expected " + known);
      } else {
        faults.say(at, "unknown-key", key, near, "unknown key, did you mean " + near + "?");
      }
    }
  }
}
