package thudbook;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import thudbook.notebook.AddedNoun;
import thudbook.settings.Settings;

/** A notebook with the samples, served on a free port from a folder of the test. */
public final class ServedNotebook implements AutoCloseable {
  private final Notebook notebook;

  private ServedNotebook(Notebook notebook) {
    this.notebook = notebook;
  }

  /** Serves from a folder, with further settings by name. */
  public static ServedNotebook in(Path folder, Map<String, String> settings) throws IOException {
    return in(folder, settings, List.of());
  }

  /** The same with more nouns than every notebook has. */
  static ServedNotebook in(Path folder, Map<String, String> settings, List<AddedNoun<?>> nouns)
      throws IOException {
    Map<String, String> all = new HashMap<>(settings);
    all.put("port", "0");
    all.put("data", folder.toString());
    Clock clock = Clock.fixed(Instant.parse("2026-11-02T10:00:00Z"), ZoneOffset.UTC);
    return new ServedNotebook(
        Notebook.open(Settings.of(all, Map.of(), Map.of()), clock, UUID::randomUUID, nouns));
  }

  /** The port that it listens on. */
  public int port() {
    return notebook.url().getPort();
  }

  @Override
  public void close() {
    notebook.close();
  }
}
