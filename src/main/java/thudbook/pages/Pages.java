package thudbook.pages;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.Map;
import thudbook.equipment.GateStore;
import thudbook.library.RecipeList;
import thudbook.recipes.RecipeStore;

/** The pages that people read. */
public final class Pages {
  private final Templates templates = new Templates();
  private final AssetAddresses assets;

  /** Pages over these stores. */
  public Pages(RecipeStore recipes, GateStore gates, RecipeList list, AssetAddresses assets) {
    this.assets = assets;
  }

  /** Adds the routes of all pages. */
  public void addTo(JavalinConfig config) {
    config.routes.get("/", this::list);
  }

  /**
   * The page that says what went wrong, as HTML.
   *
   * @param status of the answer, such as 404
   * @param message what a reader should know; never internals
   */
  public String problem(int status, String message) {
    Problem problem = Problem.of(status, message);
    return templates.fill(
        "problem", Map.of("frame", frame(problem.title(), Frame.Section.NONE), "problem", problem));
  }

  private void list(Context context) {
    context.html(problem(404, "There is no page at this address."));
  }

  private Frame frame(String title, Frame.Section section) {
    return new Frame(title, section, assets);
  }
}
