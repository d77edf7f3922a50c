package thudbook.api;

import io.javalin.config.JavalinConfig;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import thudbook.changes.Keeper;
import thudbook.changes.Thing;
import thudbook.documents.Documents;
import thudbook.documents.NewIdentity;
import thudbook.documents.NounDocument;
import thudbook.notebook.Acts;
import thudbook.notebook.Stores;

/** The JSON routes. */
public final class Api {
  private final HealthRoute health;
  private final PredictionRoute predictions;
  private final RecipeRoutes recipes;
  private final SessionRoutes sessions;
  private final List<KeptRoutes<?>> others;
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
        new RecipeRoutes(kept(Documents.RECIPE, acts, ids), stores::listening, stores.library());
    this.sessions = new SessionRoutes(kept(Documents.SESSION, acts, ids), stores);
    this.others = others(acts, ids);
    this.changes = new ChangeRoutes(stores, acts);
    this.finding =
        new FindingRoutes(stores.library(), stores.recipes(), acts.tagging(), stores.marks());
    this.shelves = new ShelfRoutes(stores.shelves(), clock);
    this.media = new MediaRoutes(stores.photos(), acts.photos());
    this.documents =
        new DocumentRoutes(stores, acts, new NewIdentity(ids, acts.changes()::slugTaken));
    this.description = new DescriptionRoute(description);
  }

  private static <T extends Thing> KeptRoutes<T> kept(
      NounDocument<T> noun, Acts acts, Supplier<UUID> ids) {
    Keeper<T> keeper = acts.changes().keeper(noun);
    return new KeptRoutes<>(noun, keeper, new NewIdentity(ids, keeper.store()::slugTaken));
  }

  /** Those of nouns of which there is nothing else to ask. */
  private static List<KeptRoutes<?>> others(Acts acts, Supplier<UUID> ids) {
    List<KeptRoutes<?>> others = new ArrayList<>();
    for (NounDocument<?> noun : acts.nouns()) {
      if (noun != Documents.RECIPE && noun != Documents.SESSION) {
        others.add(kept(noun, acts, ids));
      }
    }
    return List.copyOf(others);
  }

  /** Adds all routes. */
  public void addTo(JavalinConfig config) {
    health.addTo(config);
    predictions.addTo(config);
    recipes.addTo(config);
    sessions.addTo(config);
    others.forEach(noun -> noun.addTo(config));
    changes.addTo(config);
    finding.addTo(config);
    shelves.addTo(config);
    media.addTo(config);
    documents.addTo(config);
    description.addTo(config);
  }
}
