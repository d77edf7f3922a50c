package thudbook.documents.tree;

import java.util.List;
import java.util.Map;

/** What was read, before anyone asks what it means; the same for YAML and for JSON. */
public sealed interface Tree {
  Place place();

  /** What stands here, in words, for "found …". */
  String found();

  /** A scalar of YAML or a string of JSON. */
  record Text(Place place, String text) implements Tree {
    @Override
    public String found() {
      return text.isBlank() ? "an empty text" : text;
    }
  }

  /** A number of JSON, as it was written. */
  record Digits(Place place, String digits) implements Tree {
    @Override
    public String found() {
      return digits;
    }
  }

  /** True or false in JSON. */
  record Truth(Place place, boolean value) implements Tree {
    @Override
    public String found() {
      return String.valueOf(value);
    }
  }

  /** A key without a value, or null: the same as not written. */
  record Nothing(Place place) implements Tree {
    @Override
    public String found() {
      return "nothing";
    }
  }

  /** A list. */
  record Sequence(Place place, List<Tree> items) implements Tree {
    @Override
    public String found() {
      return "a list";
    }
  }

  /**
   * Keys with values, in the order of the document.
   *
   * @param entries each value at the place of its key
   */
  record Mapping(Place place, Map<String, Tree> entries) implements Tree {
    @Override
    public String found() {
      return "keys with values";
    }
  }
}
