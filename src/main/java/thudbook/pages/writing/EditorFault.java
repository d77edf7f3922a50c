package thudbook.pages.writing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import thudbook.quantities.Fault;

/**
 * Something wrong with a form, as it is shown.
 *
 * @param field the field that it leads to; empty: none
 * @param label what the field is called; empty: it has no field
 * @param message what is wrong, a sentence
 * @param missing whether something is not there yet rather than wrong
 */
public record EditorFault(String field, String label, String message, boolean missing) {
  /** The faults of a form that has these fields. */
  static List<EditorFault> of(List<Fault> faults, Set<String> fields) {
    List<EditorFault> shown = new ArrayList<>();
    for (Fault fault : faults) {
      EditorFault one = of(fault, fields);
      if (!shown.contains(one)) {
        shown.add(one);
      }
    }
    return shown;
  }

  private static EditorFault of(Fault fault, Set<String> fields) {
    String name = fault.place().isEmpty() ? "" : fault.place().substring(1).replace('/', '.');
    String field = fieldOf(name, fields);
    String message = fault.message();
    if (message.startsWith(name + ": ")) {
      message = message.substring(name.length() + 2);
    }
    String where = fault.line() > 0 && !field.isEmpty() ? "line " + fault.line() + ": " : "";
    String within = field.isEmpty() ? "" : name.substring(Math.min(name.length(), field.length()));
    if (within.startsWith(".") && !within.matches("[.0-9]+")) {
      where += within.substring(1) + ": ";
    } else if (within.startsWith(".") && where.isEmpty()) {
      where = "entry " + (Integer.parseInt(within.substring(1).split("\\.", -1)[0]) + 1) + ": ";
    }
    return new EditorFault(
        field,
        field.isEmpty() ? "" : label(field),
        sentence(where + message),
        fault.code().equals("missing"));
  }

  /** The field itself, the one that it stands in, or the first of the block. */
  private static String fieldOf(String name, Set<String> fields) {
    for (String at = name; !at.isEmpty(); at = at.substring(0, Math.max(0, at.lastIndexOf('.')))) {
      if (fields.contains(at)) {
        return at;
      }
    }
    return fields.stream()
        .filter(field -> !name.isEmpty() && field.startsWith(name + "."))
        .findFirst()
        .orElse("");
  }

  private static String label(String field) {
    if (field.endsWith(".kind")) {
      return sentence(field.replaceFirst(".*?([a-z]+)\\.kind$", "$1"));
    }
    String row = field.replaceFirst("^[a-z]+\\.([0-9]+)\\..*", "$1");
    String label = FieldWords.of(field).label();
    return row.equals(field) ? label : label + ", " + (Integer.parseInt(row) + 1);
  }

  private static String sentence(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
