package thudbook;

import java.io.IOException;
import java.net.URI;
import java.time.InstantSource;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import thudbook.api.Api;
import thudbook.pages.Pages;
import thudbook.recipes.Recipes;
import thudbook.recipes.Repredictions;
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
   * @throws thudbook.quantities.Refusal if the folder can't be opened
   * @throws IOException if the port is taken
   */
  static Notebook open(Settings settings, InstantSource clock, Supplier<String> requestIds)
      throws IOException {
    Database database = Database.open(settings.data());
    try {
      Repredictions repredictions = new Repredictions(database.predictions(), database.gates());
      Recipes recipes =
          new Recipes(
              database.changes(), database.recipes(), database.gates(), clock, repredictions::wake);
      if (settings.samples() && database.changes().isEmpty()) {
        recipes.loadSamples(SampleLibrary.gates(), SampleLibrary.recipes());
      }
      Server server = serve(settings, database, requestIds);
      repredictions.start();
      DailyBackups backups = new DailyBackups(database.backups(), settings.keepBackups(), clock);
      backups.start();
      return new Notebook(database, repredictions, backups, server);
    } catch (IOException | RuntimeException | Error e) {
      database.close();
      throw e;
    }
  }

  private static Server serve(Settings settings, Database database, Supplier<String> requestIds)
      throws IOException {
    Assets assets =
        new Assets(
            Bundled.list("web/assets").stream()
                .collect(
                    Collectors.toMap(path -> path, path -> Bundled.read("web/assets/" + path))),
            Bundled::ofLibrary);
    Pages pages = new Pages(database.recipes(), database.gates(), database.list(), assets::address);
    Api api =
        new Api(database.recipes(), database.gates(), database.list(), database::schemaVersion);
    return Server.start(
        new Server.Address(
            settings.listen(), settings.port(), settings.baseUrl(), settings.uploadLimitBytes()),
        pages,
        requestIds,
        config -> {
          assets.addTo(config);
          api.addTo(config);
          pages.addTo(config);
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
