package thudbook.pages.frame;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The precompiled templates of {@code web/templates}. */
final class Templates {
  private static final String PACKAGE = "thudbook.pages.templates";

  private final TemplateEngine engine =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, Templates.class.getClassLoader(), PACKAGE);

  /** Fills a template. */
  String fill(String name, Map<String, @Nullable Object> values) {
    StringOutput output = new StringOutput();
    engine.render(name + ".jte", values, output);
    return output.toString();
  }
}
