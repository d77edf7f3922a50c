package thudbook.documents.tree;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A form as a tree: names of fields are pointers with dots, {@code stages.0.gain}. Blank values and
 * what holds nothing else are as good as not written, so an empty row is no row. Where a block has
 * kinds ({@code source}, {@code envelope}, {@code strikes}), the form holds the fields of all of
 * them, {@code source.fm.carrier} beside {@code source.noise.from}; only the kind that {@code
 * source.kind} names is read. The place of each value is its field, whatever was left out before
 * it.
 */
public final class FormTree {
  /** No field of ours lies deeper; a deeper one is hostile and is not read. */
  private static final int DEEPEST = 8;

  private static final Pattern INDEX = Pattern.compile("[0-9]{1,3}");
  private static final Pattern WORDS =
      Pattern.compile("/(tags|with|strikes/at/at|controls/[0-9]+/(positions|sweep))");
  private static final Pattern PAIRS =
      Pattern.compile(
          "(.*/)?envelope/recorded/samples|/channels/[0-9]+/transfer"
              + "|/controls/[0-9]+/(ranges/[0-9]+/)?table");

  private @Nullable String text;
  private final Map<String, FormTree> fields = new LinkedHashMap<>();

  private FormTree() {}

  /** The tree of a form. */
  public static Tree.Mapping of(Map<String, List<String>> form) {
    FormTree whole = new FormTree();
    form.forEach(
        (name, values) -> {
          String[] path = name.split("\\.", DEEPEST + 1);
          if (path.length <= DEEPEST) {
            FormTree at = whole;
            for (String key : path) {
              at = at.fields.computeIfAbsent(key, absent -> new FormTree());
            }
            at.text = String.join(", ", values.stream().filter(v -> !v.isBlank()).toList());
          }
        });
    Place root = new Place(0, "");
    Tree tree = whole.tree(root);
    return tree instanceof Tree.Mapping mapping ? mapping : new Tree.Mapping(root, Map.of());
  }

  /** What stands here; null: nothing. */
  private @Nullable Tree tree(Place place) {
    if (fields.isEmpty()) {
      return text == null || text.isBlank() ? null : leaf(place, text);
    }
    FormTree kind = fields.get("kind");
    // That of a document as a whole, as of a module, is a plain word.
    if (kind != null && !place.pointer().isEmpty()) {
      return ofKind(place, kind);
    }
    if (fields.keySet().stream().allMatch(key -> INDEX.matcher(key).matches())) {
      return sequence(place);
    }
    Map<String, Tree> entries = entries(place);
    return entries.isEmpty() ? null : new Tree.Mapping(place, entries);
  }

  private Map<String, Tree> entries(Place place) {
    Map<String, Tree> entries = new LinkedHashMap<>();
    fields.forEach(
        (key, field) -> {
          Tree tree = field.tree(place.key(key, 0));
          if (tree != null) {
            entries.put(key, tree);
          }
        });
    return entries;
  }

  private @Nullable Tree ofKind(Place place, FormTree kind) {
    Place at = place.key("kind", 0);
    if (!(kind.tree(at) instanceof Tree.Text chosen)) {
      return null;
    }
    String name = chosen.text().strip();
    Place inside = place.key(name, 0);
    FormTree own = fields.get(name);
    Map<String, Tree> entries = new LinkedHashMap<>();
    if (place.pointer().equals("/strikes")) {
      // Strikes have no word for their kind: it shows in which key is there, so that one must be.
      entries.put(name, new Tree.Text(inside.key(name, 0), ""));
    } else {
      entries.put("kind", new Tree.Text(at, name));
    }
    if (own != null) {
      entries.putAll(own.entries(inside));
    }
    return new Tree.Mapping(inside, entries);
  }

  private @Nullable Tree sequence(Place place) {
    TreeMap<Integer, FormTree> rows = new TreeMap<>();
    fields.forEach((key, row) -> rows.put(Integer.parseInt(key), row));
    List<Tree> items = new ArrayList<>();
    rows.forEach(
        (index, row) -> {
          Tree item = row.tree(place.item(index, 0));
          if (item != null) {
            items.add(item);
          }
        });
    return items.isEmpty() ? null : new Tree.Sequence(place, items);
  }

  private static Tree leaf(Place place, String text) {
    if (WORDS.matcher(place.pointer()).matches()) {
      return list(place, CommaList.read(text));
    }
    if (PAIRS.matcher(place.pointer()).matches()) {
      List<Tree> pairs = new ArrayList<>();
      int line = 0;
      for (String pair : text.split("\\R", -1)) {
        if (!pair.isBlank()) {
          pairs.add(list(place.item(line, line + 1), CommaList.read(pair)));
        }
        line++;
      }
      return new Tree.Sequence(place, pairs);
    }
    return new Tree.Text(place, text);
  }

  private static Tree list(Place place, List<String> words) {
    List<Tree> items = new ArrayList<>();
    for (String word : words) {
      items.add(new Tree.Text(place.item(items.size(), place.line()), word));
    }
    return new Tree.Sequence(place, items);
  }
}
