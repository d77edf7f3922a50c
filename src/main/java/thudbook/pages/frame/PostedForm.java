package thudbook.pages.frame;

import io.javalin.http.Context;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thudbook.web.ErrorKind;
import thudbook.web.HttpError;

/**
 * What the page of an editor holds: the fields of the recipe or gate, named as documents name them,
 * and beside them what the page itself needs to know, under names that begin with {@code form.}
 *
 * @param fields all of them, in the order of the page
 */
public record PostedForm(Map<String, List<String>> fields) {
  private static final String OWN = "form.";

  /** A document has at most 256 KiB; percent signs triple it, other kinds stand beside it. */
  private static final int MOST_BYTES = 2 << 20;

  private static final Pattern ROW = Pattern.compile("([a-z]+)\\.([0-9]{1,3})\\.(.+)");

  public PostedForm {
    fields = Collections.unmodifiableMap(new LinkedHashMap<>(fields));
  }

  /**
   * The form that a browser sent.
   *
   * @throws HttpError 413 if it is larger than any document and all that was typed beside it
   */
  public static PostedForm of(Context context) {
    if (context.bodyAsBytes().length > MOST_BYTES) {
      throw new HttpError(ErrorKind.TOO_LARGE);
    }
    return new PostedForm(context.formParamMap());
  }

  /** The fields of the recipe alone. */
  public Map<String, List<String>> recipe() {
    Map<String, List<String>> recipe = new LinkedHashMap<>(fields);
    recipe.keySet().removeIf(name -> name.startsWith(OWN));
    return recipe;
  }

  /** The fields of the gate alone; the page notes under which name it found a channel. */
  public Map<String, List<String>> gate() {
    Map<String, List<String>> gate = recipe();
    gate.keySet().removeIf(name -> name.matches("channels\\.[0-9]+\\.was"));
    return gate;
  }

  /** The text of a field; empty where it is absent. */
  public String text(String name) {
    List<String> values = fields.getOrDefault(name, List.of());
    return values.isEmpty() ? "" : values.get(0);
  }

  /** What the page itself noted under a name; empty where it did not. */
  public String own(String name) {
    return text(OWN + name);
  }

  /** A number that the page noted; 0 where there is none. */
  public long number(String name) {
    String text = own(name);
    return text.matches("[0-9]{1,18}") ? Long.parseLong(text) : 0;
  }

  /** The name of the draft that keeps this form; null: it has none. */
  public @Nullable UUID key() {
    return uuid(own("key"));
  }

  /** The id of the recipe or gate that is being changed; null: a new one. */
  public @Nullable UUID subject() {
    return uuid(own("subject"));
  }

  public static @Nullable UUID uuid(String text) {
    return text.matches("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}") ? UUID.fromString(text) : null;
  }

  /** The same form with other texts in some fields. */
  public PostedForm with(Map<String, String> texts) {
    Map<String, List<String>> changed = new LinkedHashMap<>(fields);
    texts.forEach((name, text) -> changed.put(name, List.of(text)));
    return new PostedForm(changed);
  }

  /** How many rows a list has on the page, empty ones too. */
  public int rows(String list) {
    int rows = 0;
    for (String name : fields.keySet()) {
      Matcher row = ROW.matcher(name);
      if (row.matches() && row.group(1).equals(list)) {
        rows = Math.max(rows, Integer.parseInt(row.group(2)) + 1);
      }
    }
    return rows;
  }

  /** The same form with a row less; those behind it move up. */
  public PostedForm withoutRow(String list, int index) {
    Map<String, List<String>> changed = new LinkedHashMap<>();
    fields.forEach(
        (name, values) -> {
          Matcher row = ROW.matcher(name);
          int at = row.matches() && row.group(1).equals(list) ? Integer.parseInt(row.group(2)) : -1;
          if (at < index) {
            changed.put(name, values);
          } else if (at > index) {
            changed.put(list + "." + (at - 1) + "." + row.group(3), values);
          }
        });
    return new PostedForm(changed);
  }
}
