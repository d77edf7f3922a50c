package thudbook.benchmark;

import java.nio.file.Path;
import java.util.List;

/** A gate is changed behind the samples, many times over. */
final class GateEditMeasurement implements Measurement {
  private static final int RECIPES = 20_000;

  @Override
  public List<Figure> measure(Path folder) throws Exception {
    Path data = folder.resolve("data");
    LargeNotebook.fill(data, RECIPES);
    try (ServerProcess server = ServerProcess.thudbook(data)) {
      return List.of(
          new GateEdit(server.port())
              .measure(
                  "a gate changed behind 20,000 recipes", List.of("keeper-twin"), "list usable"));
    }
  }
}
