package thudbook.commands;

import java.nio.file.Path;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import thudbook.settings.Setting;
import thudbook.settings.Settings;

/** The option that names a data folder; without it the folder is the one that is served. */
final class DataFolder {
  @Option(
      names = "--data",
      paramLabel = "FOLDER",
      description = "data folder; without it the one that serve would take")
  private @Nullable String data;

  /**
   * The folder.
   *
   * @throws thudbook.quantities.Refusal if a value of a setting can't be taken
   */
  Path in(Map<String, String> environment, Map<String, String> system) {
    Map<String, String> options = data == null ? Map.of() : Map.of(Setting.DATA.key(), data);
    return Settings.of(options, environment, system).data();
  }
}
