package thudbook.pages.writing;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The fields of the editor on a page, or of a choice between two versions, as a browser without
 * scripts would send them.
 */
public final class PageForm {
  private static final Pattern FORM =
      Pattern.compile("(?s)<form [^>]*id=\"(?:editor|conflict)\".*?</form>");
  private static final Pattern CONTROL =
      Pattern.compile(
          "(?s)<input ([^>]*)>|<textarea ([^>]*)>\n?(.*?)</textarea>|<select ([^>]*)>(.*?)</select>");
  private static final Pattern CHOSEN = Pattern.compile("<option value=\"([^\"]*)\" selected");
  private static final Pattern FIRST = Pattern.compile("<option value=\"([^\"]*)\"");

  private PageForm() {}

  public static Map<String, String> fields(String html) {
    Matcher form = FORM.matcher(html);
    if (!form.find()) {
      throw new AssertionError("no editor on the page");
    }
    Map<String, String> fields = new LinkedHashMap<>();
    Matcher control = CONTROL.matcher(form.group());
    while (control.find()) {
      if (control.group(1) != null) {
        input(control.group(1), fields);
      } else if (control.group(2) != null) {
        fields.put(value(control.group(2), "name"), text(control.group(3)));
      } else {
        Matcher chosen = CHOSEN.matcher(control.group(5));
        Matcher first = FIRST.matcher(control.group(5));
        String option = chosen.find() ? chosen.group(1) : first.find() ? first.group(1) : "";
        fields.put(value(control.group(4), "name"), text(option));
      }
    }
    return fields;
  }

  private static void input(String attributes, Map<String, String> fields) {
    boolean radio = value(attributes, "type").equals("radio");
    if (!radio || attributes.matches("(?s).*\\bchecked\\b.*")) {
      fields.put(value(attributes, "name"), text(value(attributes, "value")));
    }
  }

  private static String value(String attributes, String name) {
    Matcher value = Pattern.compile("(?:^|\\s)" + name + "=\"([^\"]*)\"").matcher(attributes);
    return value.find() ? value.group(1) : "";
  }

  private static String text(String html) {
    return html.replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&#34;", "\"")
        .replace("&#39;", "'")
        .replace("&amp;", "&");
  }
}
