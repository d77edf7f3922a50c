package thudbook.documents.tree;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The words of a document for the constants of an enumeration. */
public final class Choice<T extends Enum<T>> {
  private final Map<String, T> constants = new LinkedHashMap<>();

  public Choice(T[] constants, char between) {
    Arrays.stream(constants).forEach(c -> this.constants.put(word(c, between), c));
  }

  private static String word(Enum<?> constant, char between) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', between);
  }

  /** The word for a constant. */
  public String word(T constant) {
    return constants.entrySet().stream()
        .filter(e -> e.getValue() == constant)
        .findFirst()
        .orElseThrow()
        .getKey();
  }

  /** Reads one of the words; null, with a fault, where it is another. */
  public @Nullable T read(Tree tree, Faults faults) {
    T constant = tree instanceof Tree.Text text ? constants.get(text.text().strip()) : null;
    if (constant == null) {
      faults.add(tree, "unknown-word", expected());
    }
    return constant;
  }

  /** Its words, as one says them. */
  public String expected() {
    return expected(constants.keySet());
  }

  /** Words to choose from, as one says them: {@code sine, triangle or square}. */
  public static String expected(Iterable<String> words) {
    String all = String.join(", ", words);
    int last = all.lastIndexOf(", ");
    return last < 0 ? all : all.substring(0, last) + " or " + all.substring(last + 2);
  }
}
