package thudbook.api;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.Optional;
import java.util.function.Supplier;
import thudbook.changes.Kept;
import thudbook.changes.Things;
import thudbook.equipment.Module;
import thudbook.equipment.Rack;
import thudbook.notebook.Stores;
import thudbook.recipes.Listening;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.sessions.Plan;
import thudbook.sessions.Session;

/** Sessions: all of them, one as it was written, what follows from it, its history, and writing. */
final class SessionRoutes {
  private final KeptRoutes<Session> kept;
  private final RecipeStore recipes;
  private final Supplier<Listening> listening;
  private final Things<Module> modules;

  /**
   * Routes over these stores.
   *
   * @param kept what sessions have in common with everything that is kept
   */
  SessionRoutes(KeptRoutes<Session> kept, Stores stores) {
    this.kept = kept;
    this.recipes = stores.recipes();
    this.listening = stores::listening;
    this.modules = stores.modules();
  }

  void addTo(JavalinConfig config) {
    config.routes.get("/api/sessions/{id}/plan", this::plan);
    kept.addTo(config);
  }

  private void plan(Context ctx) {
    Kept<Session> session = kept.found(ctx);
    if (!KeptAnswers.sentOn(ctx, session)) {
      Plan plan = Plan.of(session.thing(), this::standing, Rack.of(modules));
      ctx.header("Cache-Control", "no-store");
      Json.answer(ctx, PlanJson.node(plan, listening.get()));
    }
  }

  private Optional<Recipe> standing(String slug) {
    return recipes.find(slug).filter(stored -> stored.binnedAt() == null).map(Kept::thing);
  }
}
