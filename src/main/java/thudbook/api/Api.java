package thudbook.api;

import io.javalin.config.JavalinConfig;
import java.time.InstantSource;
import java.util.UUID;
import java.util.function.IntSupplier;
import java.util.function.Predicate;
import java.util.function.Supplier;
import thudbook.documents.Identity;
import thudbook.documents.NewIdentity;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;

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
   * @param ids gives what is new its id
   * @param schema the version of the database; throws while it can't be read
   * @param description the OpenAPI document of these routes
   */
  public Api(
      Stores stores,
      Acts acts,
      Supplier<UUID> ids,
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
            identity(ids, stores.recipes()::slugTaken));
    this.gates =
        new GateRoutes(stores.gates(), acts.gates(), identity(ids, stores.gates()::slugTaken));
    this.modules =
        new ModuleRoutes(
            stores.modules(), acts.modules(), identity(ids, stores.modules()::slugTaken));
    this.sessions =
        new SessionRoutes(
            stores.sessions(),
            acts.sessions(),
            identity(ids, stores.sessions()::slugTaken),
            stores.recipes(),
            stores.gates(),
            stores.modules()::rack);
    this.changes = new ChangeRoutes(stores, acts);
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
            identity(
                ids,
                slug ->
                    stores.recipes().slugTaken(slug)
                        || stores.gates().slugTaken(slug)
                        || stores.modules().slugTaken(slug)
                        || stores.sessions().slugTaken(slug)));
    this.description = new DescriptionRoute(description);
  }

  /** Gives what comes without an id and a slug both. */
  private static Identity identity(Supplier<UUID> ids, Predicate<String> taken) {
    return new NewIdentity(ids, taken);
  }

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
