package thudbook.pages.sessions;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thudbook.quantities.Fault;
import thudbook.sessions.Session;

/**
 * The form of a session, with what was typed and what is wrong with it.
 *
 * @param address where it goes
 * @param version from which the typing began; 0: a new session
 * @param faults what is wrong, a sentence each, with the field that it is about
 * @param rows one per recipe, and an empty one behind them
 */
public record SessionForm(
    String address,
    long version,
    String title,
    String date,
    String by,
    String notes,
    List<Row> rows,
    List<Wrong> faults) {
  private static final Pattern FIELD =
      Pattern.compile("recipes\\.([0-9]{1,3})\\.(recipe|note|layer|place|stays)");
  private static final Pattern DEED = Pattern.compile("(up|down|remove)-([0-9]{1,3})");

  /** A recipe of the session, as it was typed. */
  public record Row(
      int number, String recipe, String note, String layer, boolean fixed, boolean stays) {
    /** The name of one of its fields. */
    public String field(String key) {
      return "recipes." + number + "." + key;
    }
  }

  /**
   * Something that is wrong.
   *
   * @param field the id of the field; empty: none
   */
  public record Wrong(String field, String message) {}

  /** What stands in a form, put into rows. */
  static SessionForm of(
      String address, long version, Map<String, List<String>> fields, List<Fault> faults) {
    List<Row> rows = new ArrayList<>();
    for (Map<String, String> row : rows(fields)) {
      rows.add(row(rows.size(), row));
    }
    if (rows.size() < Session.MOST_ENTRIES) {
      rows.add(new Row(rows.size(), "", "", "", false, false));
    }
    return new SessionForm(
        address,
        version,
        text(fields, "title"),
        text(fields, "date"),
        text(fields, "by"),
        text(fields, "notes"),
        rows,
        faults.stream().map(SessionForm::wrong).toList());
  }

  private static Row row(int number, Map<String, String> row) {
    return new Row(
        number,
        row.getOrDefault("recipe", ""),
        row.getOrDefault("note", ""),
        row.getOrDefault("layer", ""),
        row.getOrDefault("place", "").equals("fixed"),
        row.getOrDefault("stays", "").equals("patched"));
  }

  private static Wrong wrong(Fault fault) {
    return new Wrong(
        fault.place().isEmpty() ? "" : fault.place().substring(1).replace('/', '.'),
        fault.message());
  }

  /**
   * The form after one of its buttons: {@code up-2}, {@code down-2}, {@code remove-2}; anything
   * else leaves it as it is. Rows are numbered anew.
   */
  static Map<String, List<String>> after(String deed, Map<String, List<String>> fields) {
    List<Map<String, String>> rows = rows(fields);
    Matcher matcher = DEED.matcher(deed);
    if (matcher.matches()) {
      int number = Integer.parseInt(matcher.group(2));
      int other = matcher.group(1).equals("up") ? number - 1 : number + 1;
      boolean there = number < rows.size();
      if (there && matcher.group(1).equals("remove")) {
        rows.remove(number);
      } else if (there && other >= 0 && other < rows.size()) {
        rows.add(other, rows.remove(number));
      }
    }
    Map<String, List<String>> anew = new LinkedHashMap<>(fields);
    anew.keySet().removeIf(name -> FIELD.matcher(name).matches());
    for (int i = 0; i < rows.size(); i++) {
      String prefix = "recipes." + i + ".";
      rows.get(i).forEach((key, value) -> anew.put(prefix + key, List.of(value)));
    }
    return anew;
  }

  /** Rows in which anything is written, in their order. */
  private static List<Map<String, String>> rows(Map<String, List<String>> fields) {
    Map<Integer, Map<String, String>> rows = new TreeMap<>();
    fields.forEach(
        (name, values) -> {
          Matcher matcher = FIELD.matcher(name);
          String value = values.isEmpty() ? "" : values.get(0).strip();
          if (matcher.matches() && !value.isEmpty()) {
            rows.computeIfAbsent(
                    Integer.parseInt(matcher.group(1)), absent -> new LinkedHashMap<>())
                .put(matcher.group(2), value);
          }
        });
    return new ArrayList<>(rows.values());
  }

  private static String text(Map<String, List<String>> fields, String name) {
    List<String> values = fields.getOrDefault(name, List.of());
    return values.isEmpty() ? "" : values.get(0);
  }
}
