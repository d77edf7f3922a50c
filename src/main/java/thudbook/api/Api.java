package thudbook.api;

import io.javalin.config.JavalinConfig;
import java.util.function.IntSupplier;
import thudbook.equipment.GateStore;
import thudbook.library.RecipeList;
import thudbook.recipes.RecipeStore;

/** The JSON routes. */
public final class Api {
  private final HealthRoute health;
  private final PredictionRoute predictions;
  private final RecipeRoutes recipes;
  private final GateRoutes gates;

  /**
   * Routes over these stores.
   *
   * @param schema the version of the database; throws while it can't be read
   */
  public Api(RecipeStore recipes, GateStore gates, RecipeList list, IntSupplier schema) {
    this.health = new HealthRoute(schema);
    this.predictions = new PredictionRoute(gates);
    this.recipes = new RecipeRoutes(recipes, gates, list);
    this.gates = new GateRoutes(gates);
  }

  /** Adds all routes. */
  public void addTo(JavalinConfig config) {
    health.addTo(config);
    predictions.addTo(config);
    recipes.addTo(config);
    gates.addTo(config);
  }
}
