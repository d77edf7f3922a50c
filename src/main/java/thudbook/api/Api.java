package thudbook.api;

import io.javalin.config.JavalinConfig;
import java.time.InstantSource;
import java.util.function.IntSupplier;
import thudbook.documents.DocumentStore;
import thudbook.documents.Identity;
import thudbook.equipment.GateHistory;
import thudbook.equipment.ModuleStore;
import thudbook.library.Library;
import thudbook.library.MarkStore;
import thudbook.library.ShelfStore;
import thudbook.library.Tagging;
import thudbook.photos.PhotoStore;
import thudbook.photos.Photos;
import thudbook.recipes.Changes;
import thudbook.recipes.Gates;
import thudbook.recipes.Modules;
import thudbook.recipes.PredictionStore;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Recipes;
import thudbook.sessions.SessionStore;
import thudbook.sessions.Sessions;

/** The JSON routes. */
public final class Api {
  private final HealthRoute health;
  private final PredictionRoute predictions;
  private final RecipeRoutes recipes;
  private final GateRoutes gates;
  private final ModuleRoutes modules;
  private final SessionRoutes sessions;
  private final ChangeRoutes changes;
  private final FindingRoutes finding;
  private final ShelfRoutes shelves;
  private final MediaRoutes media;
  private final DocumentRoutes documents;
  private final DescriptionRoute description;

  /**
   * Routes over these stores and acts.
   *
   * @param schema the version of the database; throws while it can't be read
   * @param description the OpenAPI document of these routes
   */
  public Api(
      Stores stores,
      Acts acts,
      Identities identities,
      InstantSource clock,
      IntSupplier schema,
      byte[] description) {
    this.health = new HealthRoute(schema);
    this.predictions = new PredictionRoute(stores.gates());
    this.recipes =
        new RecipeRoutes(
            stores.recipes(),
            stores.gates(),
            stores.library(),
            acts.recipes(),
            identities.recipes());
    this.gates = new GateRoutes(stores.gates(), acts.gates(), identities.gates());
    this.modules = new ModuleRoutes(stores.modules(), acts.modules(), identities.modules());
    this.sessions =
        new SessionRoutes(
            stores.sessions(),
            acts.sessions(),
            identities.sessions(),
            stores.recipes(),
            stores.gates(),
            stores.modules()::rack);
    this.changes =
        new ChangeRoutes(
            stores.recipes(),
            stores.gates(),
            stores.sessions(),
            stores.predictions(),
            stores.library(),
            acts.recipes(),
            acts.changes(),
            acts.tagging());
    this.finding =
        new FindingRoutes(stores.library(), stores.recipes(), acts.tagging(), stores.marks());
    this.shelves = new ShelfRoutes(stores.shelves(), clock);
    this.media = new MediaRoutes(stores.photos(), acts.photos());
    this.documents =
        new DocumentRoutes(
            stores.documents(),
            stores.photos(),
            acts.recipes(),
            acts.gates(),
            acts.modules(),
            acts.sessions(),
            identities.documents());
    this.description = new DescriptionRoute(description);
  }

  /** Where things are kept. */
  public record Stores(
      RecipeStore recipes,
      GateHistory gates,
      ModuleStore modules,
      SessionStore sessions,
      Library library,
      PredictionStore predictions,
      PhotoStore photos,
      MarkStore marks,
      ShelfStore shelves,
      DocumentStore documents) {}

  /** What can be done. */
  public record Acts(
      Recipes recipes,
      Gates gates,
      Modules modules,
      Sessions sessions,
      Changes changes,
      Photos photos,
      Tagging tagging) {}

  /** What gives ids and slugs to things that come without. */
  public record Identities(
      Identity recipes, Identity gates, Identity modules, Identity sessions, Identity documents) {}

  /** Adds all routes. */
  public void addTo(JavalinConfig config) {
    health.addTo(config);
    predictions.addTo(config);
    recipes.addTo(config);
    gates.addTo(config);
    modules.addTo(config);
    sessions.addTo(config);
    changes.addTo(config);
    finding.addTo(config);
    shelves.addTo(config);
    media.addTo(config);
    documents.addTo(config);
    description.addTo(config);
  }
}
