package thudbook.documents;

import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Choice;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Texts;
import thudbook.documents.tree.Tree;

/** What identifies documents: format, id, slug, and references to others. */
final class Names {
  private static final Pattern UUID_FORM =
      Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");
  private static final Pattern FORMAT = Pattern.compile("([a-z-]{1,40})/([0-9]{1,4})");
  private static final String ID_EXPECTED =
      "an id such as 5f0c1d1e-8f0a-4b39-9a55-1f6f6a1c7d02, or no id";
  private static final String SLUG_EXPECTED =
      "a slug of at most 80 lower-case letters, digits and single hyphens, such as tide-kick";

  private Names() {}

  /**
   * The format of a document; null, with a fault, if it is none of ours.
   *
   * @param formats those that may stand here
   */
  static @Nullable String format(Fields fields, List<String> formats, Faults faults) {
    String expected = Choice.expected(formats);
    Tree tree = fields.need("thudbook", expected);
    if (tree == null) {
      return null;
    }
    String text = tree instanceof Tree.Text written ? written.text().strip() : "";
    if (formats.contains(text)) {
      return text;
    }
    Matcher matcher = FORMAT.matcher(text);
    boolean ours = matcher.matches() && formats.contains(matcher.group(1) + "/1");
    if (ours && Integer.parseInt(matcher.group(2)) > 1) {
      faults.say(
          tree.place(),
          "newer-format",
          text,
          expected,
          "found " + text + ", which needs a newer Thudbook; this one reads " + expected);
    } else {
      faults.add(tree, "unknown-format", expected);
    }
    return null;
  }

  /** The id, if there is one. */
  static @Nullable UUID id(Fields fields, Faults faults) {
    Tree tree = fields.get("id");
    if (tree == null) {
      return null;
    }
    String text = tree instanceof Tree.Text written ? written.text().strip() : "";
    if (UUID_FORM.matcher(text).matches()) {
      return UUID.fromString(text);
    }
    faults.add(tree, "not-an-id", ID_EXPECTED);
    return null;
  }

  /** The slug, if there is one. */
  static @Nullable String slug(Fields fields, Faults faults) {
    Tree tree = fields.get("slug");
    if (tree == null) {
      return null;
    }
    String text = tree instanceof Tree.Text written ? written.text().strip() : "";
    if (Texts.isSlug(text) && !UUID_FORM.matcher(text).matches()) {
      return text;
    }
    faults.add(tree, "not-a-slug", SLUG_EXPECTED);
    return null;
  }

  /** The slug of another document that must be named. */
  static @Nullable String needReference(Fields fields, String key, String expected, Faults faults) {
    return fields.need(key, expected) == null ? null : reference(fields, key, expected, faults);
  }

  /** The slug or id of another document, if there is one. */
  static @Nullable String reference(Fields fields, String key, String expected, Faults faults) {
    Tree tree = fields.get(key);
    if (tree == null) {
      return null;
    }
    String text = tree instanceof Tree.Text written ? written.text().strip() : "";
    if (Texts.isSlug(text)) {
      return text;
    }
    faults.add(tree, "not-a-slug", expected);
    return null;
  }
}
