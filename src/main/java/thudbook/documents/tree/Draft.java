package thudbook.documents.tree;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Dimension;

/** What is to be written, in the order of its keys; printed as YAML or as JSON. */
public sealed interface Draft {
  /** A quantity: with its unit in YAML, a plain SI number in JSON. */
  record Quantity(double si, Dimension dimension) implements Draft {}

  /** A whole number. */
  record Whole(int number) implements Draft {}

  /** Words of a person, quoted in YAML where they must be. */
  record Words(String text) implements Draft {}

  /** Words of ours that YAML never takes for anything else. */
  record Token(String text) implements Draft {}

  /** What stands differently in YAML and in JSON. */
  record Either(Draft yaml, Draft json) implements Draft {}

  /** A list; in YAML on one line, or an item a line. */
  record Sequence(List<? extends Draft> items, boolean onOneLine) implements Draft {}

  /** Keys with values; in YAML on one line, or a key a line. */
  record Mapping(Map<String, Draft> entries, boolean onOneLine) implements Draft {}

  static Sequence inline(List<? extends Draft> items) {
    return new Sequence(items, true);
  }

  static Sequence lines(List<? extends Draft> items) {
    return new Sequence(items, false);
  }

  static Keys keys() {
    return new Keys();
  }

  /** Puts keys in order; a null is left out. */
  final class Keys {
    private final Map<String, Draft> entries = new LinkedHashMap<>();

    private Keys() {}

    public Keys put(String key, @Nullable Draft value) {
      if (value != null) {
        entries.put(key, value);
      }
      return this;
    }

    public Keys token(String key, @Nullable String text) {
      return put(key, text == null ? null : new Token(text));
    }

    /** Words; blank ones are left out, for they are not read either. */
    public Keys words(String key, @Nullable String text) {
      return put(key, text == null || text.isBlank() ? null : new Words(text.strip()));
    }

    public Keys quantity(String key, @Nullable Double si, Dimension dimension) {
      return put(key, si == null ? null : new Quantity(si, dimension));
    }

    public Keys whole(String key, @Nullable Integer number) {
      return put(key, number == null ? null : new Whole(number));
    }

    public <T extends Enum<T>> Keys choice(String key, Choice<T> choice, T constant) {
      return token(key, choice.word(constant));
    }

    /** All keys of another, behind these. */
    public Keys all(Keys others) {
      entries.putAll(others.entries);
      return this;
    }

    public Mapping inline() {
      return new Mapping(entries, true);
    }

    public Mapping lines() {
      return new Mapping(entries, false);
    }
  }
}
