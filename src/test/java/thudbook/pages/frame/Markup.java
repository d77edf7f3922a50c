package thudbook.pages.frame;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a page strictly: every tag that opens closes, in order, and every attribute is quoted. */
public final class Markup {
  private static final Pattern TAG =
      Pattern.compile(
          "<!doctype html>|<(/?)([a-zA-Z][a-zA-Z0-9-]*)((?:\\s+[^\\s=<>/\"']+(?:=\"[^\"]*\")?)*)\\s*(/?)>");
  private static final Pattern ATTRIBUTE = Pattern.compile("([^\\s=<>/\"']+)(?:=\"([^\"]*)\")?");
  private static final Pattern DATA =
      Pattern.compile("<script type=\"application/json\">[^<]*</script>");
  private static final Set<String> VOID =
      Set.of("meta", "link", "br", "hr", "img", "input", "wbr", "col");

  /** A tag with the names and values of its attributes. */
  public record Tag(String name, List<String> attributes, List<String> values) {
    public String value(String attribute) {
      int place = attributes.indexOf(attribute);
      return place < 0 ? "" : values.get(place);
    }
  }

  public final List<Tag> tags = new ArrayList<>();

  /**
   * Reads a page.
   *
   * @throws AssertionError naming what is not well-formed
   */
  public Markup(String html) {
    Deque<String> open = new ArrayDeque<>();
    String rest = DATA.matcher(html).replaceAll("");
    Matcher tag = TAG.matcher(rest);
    int end = 0;
    while (tag.find()) {
      textOnly(rest.substring(end, tag.start()));
      end = tag.end();
      if (tag.group(2) == null) {
        continue;
      }
      String name = tag.group(2).toLowerCase(Locale.ROOT);
      if (!tag.group(1).isEmpty()) {
        if (open.isEmpty() || !open.pop().equals(name)) {
          throw new AssertionError(
              "</" + name + "> closes nothing, at " + rest.substring(tag.start()));
        }
        continue;
      }
      tags.add(read(name, tag.group(3)));
      if (!VOID.contains(name) && tag.group(4).isEmpty()) {
        open.push(name);
      }
    }
    textOnly(rest.substring(end));
    if (!open.isEmpty()) {
      throw new AssertionError("never closed: " + open);
    }
  }

  public List<Tag> all(String name) {
    return tags.stream().filter(tag -> tag.name().equals(name)).toList();
  }

  private static Tag read(String name, String text) {
    List<String> names = new ArrayList<>();
    List<String> values = new ArrayList<>();
    Matcher attribute = ATTRIBUTE.matcher(text);
    while (attribute.find()) {
      if (names.contains(attribute.group(1))) {
        throw new AssertionError("twice in one tag: " + attribute.group(1));
      }
      names.add(attribute.group(1));
      values.add(attribute.group(2) == null ? "" : attribute.group(2));
    }
    return new Tag(name, names, values);
  }

  private static void textOnly(String text) {
    if (text.contains("<")) {
      throw new AssertionError("a stray <, at " + text);
    }
  }
}
