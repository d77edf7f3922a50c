package thudbook.pages.rack;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import thudbook.pages.frame.PostedForm;
import thudbook.quantities.Fault;

/**
 * The form of a module, with what was typed and what is wrong with it. Each row of controls has the
 * fields of knobs and of switches; which of them count follows from what is filled in, and the
 * others are left out before it is read.
 *
 * @param address where it goes
 * @param version from which the typing began; 0: a new module
 * @param fields by name, as documents name them
 * @param controls numbers of the rows of controls
 * @param gates slugs of the studio's gates
 */
public record ModuleForm(
    String address,
    long version,
    Map<String, String> fields,
    int controls,
    int ports,
    List<String> gates,
    List<Wrong> faults) {
  private static final Pattern ROW = Pattern.compile("(controls|ports)\\.([0-9]{1,3})\\.(.+)");
  private static final Pattern RANGE =
      Pattern.compile("controls\\.([0-9]{1,3})\\.ranges\\.([0-9]{1,2})\\..+");
  private static final Pattern REMOVE = Pattern.compile("remove-(controls|ports)-([0-9]{1,3})");

  /** Fields that a row has even if nothing is written in it: choices. */
  private static final Pattern CHOICE = Pattern.compile(".*\\.(taper|direction|carries)");

  /**
   * Something that is wrong.
   *
   * @param field the name of the field; empty: none
   */
  public record Wrong(String field, String message) {}

  static ModuleForm of(
      String address,
      long version,
      Map<String, List<String>> typed,
      List<String> gates,
      List<Fault> faults) {
    Map<String, String> fields = new LinkedHashMap<>();
    typed.forEach((name, values) -> fields.put(name, values.isEmpty() ? "" : values.get(0)));
    return new ModuleForm(
        address,
        version,
        fields,
        rows(fields, "controls"),
        rows(fields, "ports"),
        gates,
        faults.stream().map(ModuleForm::wrong).toList());
  }

  /** The text of a field; empty where nothing stands. */
  public String value(String name) {
    return fields.getOrDefault(name, "");
  }

  /** What is wrong with a field, or with something inside it; empty: nothing. */
  public String fault(String name) {
    return faults.stream()
        .filter(wrong -> wrong.field().equals(name) || wrong.field().startsWith(name + "."))
        .map(Wrong::message)
        .findFirst()
        .orElse("");
  }

  /** The numbers of the ranges that a knob's form shows: those there are, and one more. */
  public List<Integer> ranges(int control) {
    TreeSet<Integer> numbers = new TreeSet<>();
    for (String name : fields.keySet()) {
      Matcher matcher = RANGE.matcher(name);
      if (matcher.matches() && Integer.parseInt(matcher.group(1)) == control) {
        numbers.add(Integer.parseInt(matcher.group(2)));
      }
    }
    int next = numbers.isEmpty() ? 0 : numbers.last() + 1;
    if (!value("controls." + control + ".by").isEmpty() && !isBlankRange(control, next - 1)) {
      numbers.add(next);
    }
    return new ArrayList<>(numbers);
  }

  private boolean isBlankRange(int control, int range) {
    return range >= 0 && value("controls." + control + ".ranges." + range + ".at").isBlank();
  }

  /**
   * The form after one of its buttons: {@code add-controls}, {@code remove-ports-3}; anything else
   * leaves it as it is.
   */
  static Map<String, List<String>> after(String deed, Map<String, List<String>> typed) {
    Map<String, List<String>> after = new LinkedHashMap<>(typed);
    Matcher remove = REMOVE.matcher(deed);
    if (remove.matches()) {
      after =
          new LinkedHashMap<>(
              new PostedForm(typed)
                  .withoutRow(remove.group(1), Integer.parseInt(remove.group(2)))
                  .fields());
    } else if (deed.equals("add-controls") || deed.equals("add-ports")) {
      String list = deed.substring("add-".length());
      after.put(list + "." + new PostedForm(typed).rows(list) + ".name", List.of(""));
    }
    return after;
  }

  /** The fields that count: of a switch its positions, of a knob its range or its ranges. */
  static Map<String, List<String>> counting(Map<String, List<String>> typed) {
    Map<String, List<String>> counting = new LinkedHashMap<>(typed);
    PostedForm form = new PostedForm(typed);
    for (String list : List.of("controls", "ports")) {
      for (int i = 0; i < form.rows(list); i++) {
        String row = list + "." + i + ".";
        if (typed.keySet().stream()
            .filter(name -> name.startsWith(row) && !CHOICE.matcher(name).matches())
            .allMatch(name -> form.text(name).isBlank())) {
          counting.keySet().removeIf(name -> name.startsWith(row));
        }
      }
    }
    for (int i = 0; i < form.rows("controls"); i++) {
      String row = "controls." + i + ".";
      if (!form.text(row + "positions").isBlank()) {
        counting
            .keySet()
            .removeIf(
                name ->
                    name.startsWith(row)
                        && !name.equals(row + "name")
                        && !name.equals(row + "positions"));
      } else if (form.text(row + "by").isBlank()) {
        counting.keySet().removeIf(name -> name.startsWith(row + "ranges."));
        keepTaper(form, row, counting);
      } else {
        for (String key : List.of("taper", "from", "to", "table")) {
          counting.remove(row + key);
        }
        for (int range : IntStream.range(0, 100).toArray()) {
          keepRange(form, row + "ranges." + range + ".", counting);
        }
      }
    }
    return counting;
  }

  private static void keepRange(PostedForm form, String row, Map<String, List<String>> counting) {
    if (List.of("at", "from", "to", "table").stream()
        .allMatch(key -> form.text(row + key).isBlank())) {
      counting.keySet().removeIf(name -> name.startsWith(row));
    } else {
      keepTaper(form, row, counting);
    }
  }

  private static void keepTaper(PostedForm form, String row, Map<String, List<String>> counting) {
    if (form.text(row + "taper").equals("table")) {
      counting.remove(row + "from");
      counting.remove(row + "to");
    } else {
      counting.remove(row + "table");
    }
  }

  private static int rows(Map<String, String> fields, String list) {
    int rows = 0;
    for (String name : fields.keySet()) {
      Matcher matcher = ROW.matcher(name);
      if (matcher.matches() && matcher.group(1).equals(list)) {
        rows = Math.max(rows, Integer.parseInt(matcher.group(2)) + 1);
      }
    }
    return rows;
  }

  private static Wrong wrong(Fault fault) {
    String field = fault.place().isEmpty() ? "" : fault.place().substring(1).replace('/', '.');
    String message = fault.message();
    if (!field.isEmpty() && message.startsWith(field + ": ")) {
      message = message.substring(field.length() + 2);
    }
    // A fault in a list leads to the one field in which that list is typed.
    return new Wrong(
        field.replaceFirst("\\.(table|positions|sweep)\\..*", ".$1"),
        message.substring(0, 1).toUpperCase(Locale.ROOT) + message.substring(1));
  }

  /** Where a fault leads to in words: {@code control 2, from}. */
  public static String where(String field) {
    Matcher matcher = ROW.matcher(field);
    return matcher.matches()
        ? (matcher.group(1).equals("controls") ? "control " : "port ")
            + (Integer.parseInt(matcher.group(2)) + 1)
            + ", "
            + matcher.group(3).replace('.', ' ')
        : field;
  }
}
