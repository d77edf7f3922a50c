package thudbook.documents.tree;

import java.util.Map;
import java.util.stream.Collectors;

/** A draft as canonical YAML. */
public final class YamlPrint {
  private final StringBuilder out = new StringBuilder();

  private YamlPrint() {}

  public static String of(Draft.Mapping draft) {
    YamlPrint print = new YamlPrint();
    print.mapping(draft, 0, 0);
    return print.out.toString();
  }

  /** Prints keys a line; the first one follows what is on its line already. */
  private void mapping(Draft.Mapping mapping, int indent, int firstIndent) {
    int pad = firstIndent;
    for (Map.Entry<String, Draft> entry : mapping.entries().entrySet()) {
      out.append(" ".repeat(pad)).append(entry.getKey()).append(':');
      Draft value = ofYaml(entry.getValue());
      if (value instanceof Draft.Mapping inner && !inner.onOneLine()) {
        out.append('\n');
        mapping(inner, indent + 2, indent + 2);
      } else if (value instanceof Draft.Sequence list && !list.onOneLine()) {
        out.append('\n');
        list.items().forEach(item -> item(item, indent + 2));
      } else {
        out.append(' ').append(line(value)).append('\n');
      }
      pad = indent;
    }
  }

  private void item(Draft item, int indent) {
    out.append(" ".repeat(indent)).append("- ");
    if (item instanceof Draft.Mapping mapping && !mapping.onOneLine()) {
      mapping(mapping, indent + 2, 0);
    } else {
      out.append(line(item)).append('\n');
    }
  }

  private static Draft ofYaml(Draft draft) {
    return draft instanceof Draft.Either either ? either.yaml() : draft;
  }

  /** A value as it stands on one line. */
  public static String line(Draft given) {
    Draft draft = ofYaml(given);
    if (draft instanceof Draft.Quantity quantity) {
      return quantity.dimension().write(quantity.si());
    } else if (draft instanceof Draft.Whole whole) {
      return String.valueOf(whole.number());
    } else if (draft instanceof Draft.Words words) {
      return Texts.yaml(words.text());
    } else if (draft instanceof Draft.Token token) {
      return token.text();
    } else if (draft instanceof Draft.Sequence list) {
      return list.items().stream().map(YamlPrint::line).collect(Collectors.joining(", ", "[", "]"));
    }
    return ((Draft.Mapping) draft)
        .entries().entrySet().stream()
            .map(e -> e.getKey() + ": " + line(e.getValue()))
            .collect(Collectors.joining(", ", "{", "}"));
  }
}
