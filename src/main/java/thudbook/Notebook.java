package thudbook;

import java.io.IOException;
import java.net.URI;
import java.time.InstantSource;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import thudbook.api.Api;
import thudbook.documents.Documents;
import thudbook.documents.NewIdentity;
import thudbook.equipment.GateHistory;
import thudbook.library.Library;
import thudbook.library.Tagging;
import thudbook.pages.EquipmentRoutes;
import thudbook.pages.Pages;
import thudbook.pages.PhotoRoutes;
import thudbook.pages.RecallRoutes;
import thudbook.pages.SessionRoutes;
import thudbook.pages.ShareRoutes;
import thudbook.photos.Photos;
import thudbook.recipes.ChangeStore;
import thudbook.recipes.Changes;
import thudbook.recipes.Gates;
import thudbook.recipes.Modules;
import thudbook.recipes.RecipeStore;
import thudbook.recipes.Recipes;
import thudbook.recipes.Repredictions;
import thudbook.sessions.Sessions;
import thudbook.storage.Database;
import thudbook.web.Assets;
import thudbook.web.Server;

/** A notebook that is being served: its data folder, its background work and its server. */
final class Notebook implements AutoCloseable {
  private final Database database;
  private final Repredictions repredictions;
  private final DailyBackups backups;
  private final Server server;

  private Notebook(
      Database database, Repredictions repredictions, DailyBackups backups, Server server) {
    this.database = database;
    this.repredictions = repredictions;
    this.backups = backups;
    this.server = server;
  }

  /**
   * Opens the data folder, loads the samples if it is new, and serves.
   *
   * @param ids gives what is new its id, and each error of ours a name of its own
   * @throws thudbook.quantities.Refusal if the folder can't be opened
   * @throws IOException if the port is taken
   */
  static Notebook open(Settings settings, InstantSource clock, Supplier<UUID> ids)
      throws IOException {
    Database database = Database.open(settings.data());
    try {
      Repredictions repredictions = new Repredictions(database.predictions(), database.gates());
      Api.Acts acts = acts(database, clock, repredictions::wake);
      if (settings.samples() && database.changes().isEmpty()) {
        acts.recipes()
            .loadSamples(SampleLibrary.gates(), SampleLibrary.recipes(), SampleLibrary.others());
      }
      Server server = serve(settings, database, acts, clock, ids);
      repredictions.start();
      DailyBackups backups = new DailyBackups(database.backups(), settings.keepBackups(), clock);
      backups.start();
      return new Notebook(database, repredictions, backups, server);
    } catch (IOException | RuntimeException | Error e) {
      database.close();
      throw e;
    }
  }

  private static Api.Acts acts(Database database, InstantSource clock, Runnable afterwards) {
    ChangeStore changes = database.changes();
    RecipeStore recipes = database.recipes();
    GateHistory gates = database.gates();
    Recipes acted = new Recipes(changes, recipes, gates, clock, afterwards);
    return new Api.Acts(
        acted,
        new Gates(changes, recipes, gates, clock, afterwards),
        new Modules(changes, database.modules(), clock),
        new Sessions(changes, database.sessions(), clock),
        new Changes(changes, recipes, gates, clock, afterwards),
        new Photos(database.photos(), clock),
        new Tagging(database.library(), recipes, acted, Documents::write));
  }

  private static Server serve(
      Settings settings, Database database, Api.Acts acts, InstantSource clock, Supplier<UUID> ids)
      throws IOException {
    Assets assets =
        new Assets(
            Bundled.list("web/assets").stream()
                .collect(
                    Collectors.toMap(path -> path, path -> Bundled.read("web/assets/" + path))),
            Bundled::ofLibrary);
    Library library = database.library();
    Pages pages =
        new Pages(
            new Pages.Stores(
                database.recipes(),
                database.gates(),
                database.modules(),
                library,
                database.predictions(),
                database.drafts(),
                database.photos(),
                database.marks(),
                database.shelves(),
                database.sessions(),
                database.recalls()),
            new Pages.Acts(acts.recipes(), acts.gates(), acts.changes(), acts.tagging()),
            assets::address,
            clock,
            ids);
    ShareRoutes share =
        new ShareRoutes(
            pages,
            database.recipes(),
            database.gates(),
            database.modules(),
            database.sessions(),
            library,
            new ShareRoutes.Acts(acts.recipes(), acts.photos()),
            ids);
    EquipmentRoutes equipment =
        new EquipmentRoutes(pages, database.modules(), database.gates(), acts.modules(), ids);
    SessionRoutes sessions =
        new SessionRoutes(
            pages,
            new SessionRoutes.Stores(
                database.sessions(),
                database.recipes(),
                database.gates(),
                database.recalls(),
                library,
                database.modules()::rack),
            acts.sessions(),
            ids);
    RecallRoutes recalls =
        new RecallRoutes(
            pages,
            new RecallRoutes.Stores(
                database.recipes(),
                database.gates(),
                database.photos(),
                database.sessions(),
                database.recalls(),
                database.marks(),
                database.modules()::rack),
            acts.recipes(),
            clock,
            ids,
            settings.reachedAt());
    PhotoRoutes photos = new PhotoRoutes(database.recipes(), acts.recipes(), acts.photos());
    Api api =
        new Api(
            new Api.Stores(
                database.recipes(),
                database.gates(),
                database.modules(),
                database.sessions(),
                library,
                database.predictions(),
                database.photos(),
                database.marks(),
                database.shelves(),
                database.documents()),
            acts,
            new Api.Identities(
                new NewIdentity(ids, database.recipes()::slugTaken),
                new NewIdentity(ids, database.gates()::slugTaken),
                new NewIdentity(ids, database.modules()::slugTaken),
                new NewIdentity(ids, database.sessions()::slugTaken),
                new NewIdentity(
                    ids,
                    slug ->
                        database.recipes().slugTaken(slug)
                            || database.gates().slugTaken(slug)
                            || database.modules().slugTaken(slug)
                            || database.sessions().slugTaken(slug))),
            clock,
            database::schemaVersion,
            Bundled.read("openapi.json"));
    return Server.start(
        new Server.Address(
            settings.listen(), settings.port(), settings.baseUrl(), settings.uploadLimitBytes()),
        pages,
        () -> ids.get().toString(),
        config -> {
          assets.addTo(config);
          api.addTo(config);
          pages.addTo(config);
          share.addTo(config);
          equipment.addTo(config);
          sessions.addTo(config);
          recalls.addTo(config);
          photos.addTo(config);
        });
  }

  /** Where it is reached, with a slash at the end. */
  URI url() {
    return server.url();
  }

  /** Finishes what is being answered, then what is being written. */
  @Override
  public void close() {
    server.close();
    backups.close();
    repredictions.close();
    database.close();
  }
}
