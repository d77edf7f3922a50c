package thudbook.documents;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thudbook.documents.tree.Draft;
import thudbook.documents.tree.Faults;
import thudbook.documents.tree.Fields;
import thudbook.documents.tree.Tree;
import thudbook.quantities.Dimension;
import thudbook.quantities.Position;
import thudbook.recipes.Recipe;

/** What a person needs to rebuild a patch: connections, settings, mix, treatment, photos. */
final class PatchPart {
  private static final Pattern PHOTO = Pattern.compile("[0-9a-f]{64}\\.[a-z]{2,5}");
  private static final Pattern VALUE =
      Pattern.compile("(source|envelope|strikes|stages|output)(\\.[A-Za-z0-9]{1,40}){1,6}");

  private PatchPart() {}

  static List<Recipe.Connection> connections(Fields recipe, Faults faults) {
    return rows(
        recipe,
        "connections",
        row -> {
          String out = row.needLine("out", Limits.NAME);
          String in = row.needLine("in", Limits.NAME);
          return out == null || in == null ? null : new Recipe.Connection(out, in);
        },
        faults);
  }

  static List<Recipe.Setting> settings(Fields recipe, Faults faults) {
    return rows(
        recipe,
        "settings",
        row -> {
          String module = row.needLine("module", Limits.NAME);
          String control = row.needLine("control", Limits.NAME);
          Tree at = row.need("at", Position.EXPECTED);
          Position position = at == null ? null : PositionPart.read(at, faults);
          String value =
              form(row, "for", VALUE, "a value of the sound such as envelope.decay", faults);
          return module == null || control == null || position == null
              ? null
              : new Recipe.Setting(module, control, position, value);
        },
        faults);
  }

  static List<Recipe.Mix> mix(Fields recipe, Faults faults) {
    return rows(
        recipe,
        "mix",
        row -> {
          String into = row.needLine("into", Limits.NAME);
          Double level = row.quantity("level", Limits.MIX);
          return into == null ? null : new Recipe.Mix(into, level);
        },
        faults);
  }

  static List<Recipe.After> after(Fields recipe, Faults faults) {
    return rows(
        recipe,
        "after",
        row -> {
          String what = row.needLine("what", Limits.NAME);
          String how = row.line("how", Limits.SENTENCE);
          return what == null ? null : new Recipe.After(what, how);
        },
        faults);
  }

  static List<Recipe.Photo> photos(Fields recipe, Faults faults) {
    String expected = "the SHA-256 of a photo in lower-case hexadecimal, a dot and its ending";
    return rows(
        recipe,
        "photos",
        row -> {
          String file =
              row.need("file", expected) == null
                  ? null
                  : form(row, "file", PHOTO, expected, faults);
          String shows = row.line("shows", Limits.SENTENCE);
          return file == null ? null : new Recipe.Photo(file, shows);
        },
        faults);
  }

  private static <T> List<T> rows(
      Fields recipe, String key, Function<Fields, @Nullable T> reader, Faults faults) {
    List<T> rows = new ArrayList<>();
    for (Tree item : recipe.items(key, Limits.ROWS)) {
      Fields row = Fields.of(item, faults);
      T read = reader.apply(row);
      row.done();
      if (read != null) {
        rows.add(read);
      }
    }
    return rows;
  }

  private static @Nullable String form(
      Fields row, String key, Pattern pattern, String expected, Faults faults) {
    Tree tree = row.get(key);
    if (tree == null) {
      return null;
    }
    String text = tree instanceof Tree.Text written ? written.text().strip() : "";
    if (pattern.matcher(text).matches()) {
      return text;
    }
    faults.add(tree, "wrong-form", expected);
    return null;
  }

  static Draft.Keys write(Recipe recipe) {
    return Draft.keys()
        .put(
            "connections",
            lines(
                recipe.connections(), c -> Draft.keys().words("out", c.out()).words("in", c.in())))
        .put(
            "settings",
            lines(
                recipe.settings(),
                s ->
                    Draft.keys()
                        .words("module", s.module())
                        .words("control", s.control())
                        .put("at", PositionPart.write(s.at()))
                        .token("for", s.forValue())))
        .put(
            "mix",
            inline(
                recipe.mix(),
                m ->
                    Draft.keys()
                        .words("into", m.into())
                        .quantity("level", m.levelDb(), Dimension.LEVEL)))
        .put(
            "after",
            inline(recipe.after(), a -> Draft.keys().words("what", a.what()).words("how", a.how())))
        .put(
            "photos",
            inline(
                recipe.photos(),
                p -> Draft.keys().token("file", p.file()).words("shows", p.shows())));
  }

  private static <T> @Nullable Draft lines(List<T> rows, Function<T, Draft.Keys> writer) {
    return rows.isEmpty()
        ? null
        : Draft.lines(rows.stream().map(row -> writer.apply(row).inline()).toList());
  }

  private static <T> @Nullable Draft inline(List<T> rows, Function<T, Draft.Keys> writer) {
    return rows.isEmpty()
        ? null
        : Draft.inline(rows.stream().map(row -> writer.apply(row).inline()).toList());
  }
}
