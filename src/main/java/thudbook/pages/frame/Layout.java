package thudbook.pages.frame;

import io.javalin.http.Context;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Fills the templates of pages, with what every page has around its own content. */
public final class Layout {
  private final Templates templates = new Templates();
  private final AssetAddresses assets;

  public Layout(AssetAddresses assets) {
    this.assets = assets;
  }

  /** Answers with a page. */
  public void show(
      Context context,
      String template,
      String title,
      Frame.Section section,
      Map<String, ?> values) {
    context.header("Cache-Control", "no-cache").html(fill(template, title, section, values));
  }

  /** A page as HTML. */
  public String fill(String template, String title, Frame.Section section, Map<String, ?> values) {
    Map<String, @Nullable Object> all = new HashMap<>(values);
    all.put("frame", new Frame(title, section, assets));
    return templates.fill(template, all);
  }

  /** A part of a page as HTML, to be put into one that is shown already. */
  public String part(String template, Map<String, ?> values) {
    return templates.fill(template, new HashMap<>(values));
  }
}
