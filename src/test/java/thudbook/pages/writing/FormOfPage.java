package thudbook.pages.writing;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a browser would send of the last form on a page, without pressing a button that has a name.
 */
final class FormOfPage {
  private static final Pattern FORM =
      Pattern.compile("<form[^>]* id=\"(?:editor|conflict)\".*?</form>", Pattern.DOTALL);
  private static final Pattern FIELD =
      Pattern.compile(
          "<input([^>]*)>|<textarea([^>]*)>\n?(.*?)</textarea>|<select([^>]*)>(.*?)</select>",
          Pattern.DOTALL);
  private static final Pattern OPTION = Pattern.compile("<option([^>]*)>");
  private static final Pattern VALUE = Pattern.compile("\\bvalue=\"([^\"]*)\"");
  private static final Pattern NAME = Pattern.compile("\\bname=\"([^\"]*)\"");

  private FormOfPage() {}

  static Map<String, List<String>> fields(String html) {
    Matcher form = FORM.matcher(html);
    if (!form.find()) {
      throw new AssertionError("no form on the page: " + html);
    }
    Map<String, List<String>> fields = new LinkedHashMap<>();
    Matcher field = FIELD.matcher(form.group());
    while (field.find()) {
      if (field.group(1) != null) {
        boolean radio = field.group(1).contains("type=\"radio\"");
        if (!radio || field.group(1).matches("(?s).*\\schecked(\\s.*|=.*)?")) {
          fields.put(found(NAME, field.group(1)), List.of(found(VALUE, field.group(1))));
        }
      } else if (field.group(2) != null) {
        fields.put(found(NAME, field.group(2)), List.of(text(field.group(3))));
      } else {
        fields.put(found(NAME, field.group(4)), List.of(chosen(field.group(5))));
      }
    }
    return fields;
  }

  /** The option that is selected, or the first. */
  private static String chosen(String options) {
    Matcher option = OPTION.matcher(options);
    String first = null;
    while (option.find()) {
      String value = found(VALUE, option.group(1));
      first = first == null ? value : first;
      if (option.group(1).endsWith(" selected")) {
        return value;
      }
    }
    return first == null ? "" : first;
  }

  private static String found(Pattern pattern, String attributes) {
    Matcher matcher = pattern.matcher(attributes);
    return matcher.find() ? text(matcher.group(1)) : "";
  }

  private static String text(String html) {
    return html.replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&#34;", "\"")
        .replace("&#39;", "'")
        .replace("&quot;", "\"")
        .replace("&amp;", "&");
  }
}
