package thudbook.documents.tree;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A draft as the fields of a form, with the texts that documents write. */
public final class FormPrint {
  /** The kinds of strikes, by the key that only they have. */
  private static final List<String> STRIKES = List.of("every", "tempo", "at");

  private static final Pattern WORDS =
      Pattern.compile("tags|with|strikes\\.at\\.at|controls\\.[0-9]+\\.(positions|sweep)");

  private static final Pattern PAIRS = Pattern.compile(".*\\.(recorded\\.samples|transfer|table)");

  private final Map<String, List<String>> form = new LinkedHashMap<>();

  private FormPrint() {}

  /** The fields of a recipe, a gate or a module; {@link FormTree} reads the same from them. */
  public static Map<String, List<String>> of(Draft.Mapping document) {
    FormPrint print = new FormPrint();
    document
        .entries()
        .forEach(
            (key, value) -> {
              if (!key.equals("thudbook")) {
                print.put(key, value);
              }
            });
    return print.form;
  }

  private void put(String name, Draft given) {
    Draft draft = given instanceof Draft.Either either ? either.yaml() : given;
    if (draft instanceof Draft.Mapping mapping) {
      mapping(name, mapping.entries());
    } else if (draft instanceof Draft.Sequence list && !inOneField(name)) {
      for (int i = 0; i < list.items().size(); i++) {
        put(name + "." + i, list.items().get(i));
      }
    } else {
      form.put(name, List.of(text(name, draft)));
    }
  }

  private void mapping(String name, Map<String, Draft> entries) {
    String kind = "";
    if (entries.get("kind") instanceof Draft.Token token) {
      kind = token.text();
    } else if (name.equals("strikes")) {
      kind = STRIKES.stream().filter(entries::containsKey).findFirst().orElseThrow();
    }
    if (!kind.isEmpty()) {
      form.put(name + ".kind", List.of(kind));
    }
    String inside = kind.isEmpty() ? name : name + "." + kind;
    entries.forEach(
        (key, value) -> {
          if (!key.equals("kind")) {
            put(inside + "." + key, value);
          }
        });
  }

  private static boolean inOneField(String name) {
    return WORDS.matcher(name).matches() || PAIRS.matcher(name).matches();
  }

  private static String text(String name, Draft draft) {
    if (!(draft instanceof Draft.Sequence list)) {
      return text(draft);
    }
    return WORDS.matcher(name).matches()
        ? words(list)
        : list.items().stream()
            .map(pair -> words((Draft.Sequence) pair))
            .collect(Collectors.joining("\n"));
  }

  private static String words(Draft.Sequence list) {
    return CommaList.write(list.items().stream().map(FormPrint::text).toList());
  }

  private static String text(Draft draft) {
    if (draft instanceof Draft.Quantity quantity) {
      return quantity.dimension().write(quantity.si());
    } else if (draft instanceof Draft.Whole whole) {
      return String.valueOf(whole.number());
    } else if (draft instanceof Draft.Words words) {
      return words.text();
    } else if (draft instanceof Draft.Token token) {
      return token.text();
    }
    throw new IllegalArgumentException("a single value was expected, found " + draft);
  }
}
