package thudbook.benchmark;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import thudbook.KillsWhileSaving;

/** Servers are killed while clients save; it fails if an answered save is lost. */
final class KillMeasurement implements Measurement {
  private static final int KILLS = Integer.getInteger("benchmark.kills", 200);

  @Override
  public List<Figure> measure(Path folder) throws Exception {
    int saves = new KillsWhileSaving(folder.resolve("data")).rounds(KILLS);
    return List.of(
        new Figure(
            KILLS + " kills while four clients save: answered saves, and those lost",
            String.format(Locale.ROOT, "%,d, 0", saves),
            "none lost"));
  }
}
