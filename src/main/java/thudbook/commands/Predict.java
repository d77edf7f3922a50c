package thudbook.commands;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thudbook.api.PredictionJson;
import thudbook.changes.Things;
import thudbook.equipment.Gate;
import thudbook.predictions.Prediction;
import thudbook.predictions.Predictor;
import thudbook.predictions.Sound;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;
import thudbook.storage.Database;

/** Predicts recipe files. */
@Command(
    name = "predict",
    description = {
      "Predicts recipe files. A gate that a recipe names is looked for in ../gates beside it,",
      "unless a folder or a notebook is given."
    },
    mixinStandardHelpOptions = true)
public final class Predict implements Callable<Integer> {
  @Parameters(arity = "1..*", paramLabel = "FILE", description = "recipe documents")
  private List<Path> files = List.of();

  @Option(names = "--json", description = "one line of JSON per file, in SI units")
  private boolean json;

  @ArgGroup private @Nullable Studio studio;

  @Spec private @Nullable CommandSpec spec;

  private final DocumentFiles documents;

  /** Predicts files; those without an id get one of these in passing. */
  public Predict(Supplier<UUID> ids) {
    this.documents = new DocumentFiles(ids);
  }

  /** Where the gates are. */
  static final class Studio {
    @Option(
        names = "--gates",
        paramLabel = "FOLDER",
        description = "folder of gate documents, <slug>.md")
    private @Nullable Path gates;

    @Option(
        names = "--data",
        paramLabel = "FOLDER",
        description = "data folder of a notebook that is not being served")
    private @Nullable Path data;
  }

  @Override
  public Integer call() {
    CommandLine commandLine = Objects.requireNonNull(spec).commandLine();
    if (studio == null) {
      return predictAll(commandLine, file -> GateFolder.beside(file, documents));
    }
    if (studio.gates != null) {
      Things<Gate> gates = new GateFolder(existing(commandLine, studio.gates), documents);
      return predictAll(commandLine, recipe -> gates);
    }
    Path data = existing(commandLine, Objects.requireNonNull(studio.data));
    try (Database database = Database.open(data)) {
      Things<Gate> gates = database.gates();
      return predictAll(commandLine, recipe -> gates);
    }
  }

  private static Path existing(CommandLine commandLine, Path folder) {
    if (Files.isDirectory(folder)) {
      return folder;
    }
    throw new ParameterException(commandLine, "there is no folder " + folder);
  }

  private int predictAll(CommandLine commandLine, Function<Path, Things<Gate>> gatesOf) {
    int code = CommandLine.ExitCode.OK;
    for (Path file : files) {
      try {
        predict(file, gatesOf.apply(file), commandLine.getOut());
      } catch (RefusedFile refused) {
        refused.lines().forEach(commandLine.getErr()::println);
        code = CommandLine.ExitCode.SOFTWARE;
      }
    }
    return code;
  }

  private void predict(Path file, Things<Gate> gates, PrintWriter out) {
    if (!(documents.read(file).thing() instanceof Recipe recipe)) {
      throw RefusedFile.of(file, List.of("a recipe was expected, found a gate"));
    }
    Resolution resolution = Resolution.of(recipe, gates);
    Sound sound =
        resolution
            .complete()
            .orElseThrow(
                () ->
                    RefusedFile.of(
                        file,
                        resolution.missing().stream()
                            .map(what -> "no prediction yet: " + what)
                            .toList()));
    Prediction prediction = Predictor.predict(sound);
    if (json) {
      out.println(PredictionJson.node(prediction).put("file", file.toString()));
    } else {
      Report.of(recipe, prediction).forEach(out::println);
    }
  }
}
