package thudbook;

import java.io.IOException;
import java.net.URI;
import java.time.InstantSource;
import java.util.List;
import java.util.UUID;
import java.util.function.IntSupplier;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import thudbook.access.Author;
import thudbook.api.Api;
import thudbook.commands.Served;
import thudbook.notebook.Acts;
import thudbook.notebook.AddedNoun;
import thudbook.notebook.Stores;
import thudbook.pages.Pages;
import thudbook.recipes.Repredictions;
import thudbook.settings.Settings;
import thudbook.storage.Database;
import thudbook.web.Assets;
import thudbook.web.Server;

/** A notebook that is being served: its data folder, its background work and its server. */
final class Notebook implements Served {
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
    return open(settings, clock, ids, List.of());
  }

  /** The same with more nouns than every notebook has. */
  static Notebook open(
      Settings settings, InstantSource clock, Supplier<UUID> ids, List<AddedNoun<?>> more)
      throws IOException {
    Database database =
        Database.open(settings.data(), more.stream().map(AddedNoun::documents).toList());
    try {
      Repredictions repredictions = new Repredictions(database.predictions(), database.gates());
      Acts acts = Acts.on(database, clock, repredictions::wake, more);
      // Once, and not again when they were thrown away.
      if (settings.samples() && acts.changes().isEmpty()) {
        acts.changes().write(SampleLibrary.writes(), Author.SAMPLES, "loaded the sample library");
      }
      Server server = serve(settings, database, database::schemaVersion, acts, clock, ids);
      repredictions.start();
      DailyBackups backups = new DailyBackups(database.backups(), settings.keepBackups(), clock);
      backups.start();
      return new Notebook(database, repredictions, backups, server);
    } catch (IOException | RuntimeException | Error e) {
      database.close();
      throw e;
    }
  }

  /**
   * Serves an opened notebook.
   *
   * @param schema the version of its tables
   */
  static Server serve(
      Settings settings,
      Stores stores,
      IntSupplier schema,
      Acts acts,
      InstantSource clock,
      Supplier<UUID> ids)
      throws IOException {
    Assets assets = assets();
    Pages pages = new Pages(stores, acts, assets::address, clock, ids, settings.reachedAt());
    byte[] description = Bundled.read("openapi.json");
    Api api = new Api(stores, acts, ids, clock, schema, description);
    return Server.start(
        new Server.Address(
            settings.listen(), settings.port(), settings.baseUrl(), settings.uploadLimitBytes()),
        pages,
        () -> ids.get().toString(),
        config -> {
          assets.addTo(config);
          api.addTo(config);
          pages.addTo(config);
        });
  }

  private static Assets assets() {
    return new Assets(
        Bundled.list("web/assets").stream()
            .collect(Collectors.toMap(path -> path, path -> Bundled.read("web/assets/" + path))),
        Bundled::ofLibrary);
  }

  @Override
  public URI url() {
    return server.url();
  }

  @Override
  public void close() {
    server.close();
    backups.close();
    repredictions.close();
    database.close();
  }
}
