package thudbook.api;

import io.javalin.config.JavalinConfig;
import java.time.InstantSource;
import java.util.UUID;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import thudbook.changes.Keeper;
import thudbook.changes.Thing;
import thudbook.documents.Documents;
import thudbook.documents.NewIdentity;
import thudbook.documents.NounDocument;
import thudbook.equipment.Gate;
import thudbook.equipment.Module;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;

/** The JSON routes. */
public final class Api {
  private final HealthRoute health;
  private final PredictionRoute predictions;
  private final RecipeRoutes recipes;
  private final KeptRoutes<Gate> gates;
  private final KeptRoutes<Module> modules;
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
            kept(Documents.RECIPE, acts.recipes(), ids), stores::listening, stores.library());
    this.gates = kept(Documents.GATE, acts.gates(), ids);
    this.modules = kept(Documents.MODULE, acts.modules(), ids);
    this.sessions = new SessionRoutes(kept(Documents.SESSION, acts.sessions(), ids), stores);
    this.changes = new ChangeRoutes(stores, acts);
    this.finding =
        new FindingRoutes(stores.library(), stores.recipes(), acts.tagging(), stores.marks());
    this.shelves = new ShelfRoutes(stores.shelves(), clock);
    this.media = new MediaRoutes(stores.photos(), acts.photos());
    this.documents =
        new DocumentRoutes(
            stores.documents(),
            stores.photos(),
            acts.changes(),
            new NewIdentity(ids, acts.changes()::slugTaken));
    this.description = new DescriptionRoute(description);
  }

  private static <T extends Thing> KeptRoutes<T> kept(
      NounDocument<T> noun, Keeper<T> acts, Supplier<UUID> ids) {
    return new KeptRoutes<>(noun, acts, new NewIdentity(ids, acts.store()::slugTaken));
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
