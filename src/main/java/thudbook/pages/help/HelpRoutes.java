package thudbook.pages.help;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import thudbook.library.Quantity;
import thudbook.pages.frame.Frame;
import thudbook.pages.frame.Layout;
import thudbook.pages.frame.Requested;
import thudbook.web.ErrorKind;
import thudbook.wording.MetricWords;

/** The help: its index, its pages, and what to do about each kind of error. */
public final class HelpRoutes {
  private final Layout layout;

  public HelpRoutes(Layout layout) {
    this.layout = layout;
  }

  public void addTo(JavalinConfig config) {
    config
        .routes
        .get("/help", this::index)
        .get("/help/{page}", this::page)
        .get("/help/errors/{kind}", this::error);
  }

  private void index(Context context) {
    layout.show(context, "help/index", "Help", Frame.Section.HELP, Map.of());
  }

  private void page(Context context) {
    Help page =
        Help.find(context.pathParam("page"))
            .orElseThrow(() -> Requested.notFound("The help has no page of this name."));
    Map<String, Object> values =
        switch (page.slug()) {
          case "numbers" -> Map.of("numbers", MetricWords.all());
          case "finding" -> Map.of("quantities", List.of(Quantity.values()));
          default -> Map.of();
        };
    layout.show(context, page.template(), page.title(), Frame.Section.HELP, values);
  }

  private void error(Context context) {
    Remedy remedy =
        ErrorKind.ofSlug(context.pathParam("kind"))
            .map(Remedy::of)
            .orElseThrow(() -> Requested.notFound("The help has no page of this name."));
    layout.show(
        context, "help/error", remedy.kind().title(), Frame.Section.HELP, Map.of("remedy", remedy));
  }
}
