package thudbook.commands;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thudbook.documents.Documents;
import thudbook.recipes.Recipe;
import thudbook.recipes.Resolution;

/** Reads documents and says what is wrong with them, and what a half-written one still lacks. */
@Command(
    name = "check",
    description = "Reads documents and lists every fault, and what a half-written recipe lacks.",
    mixinStandardHelpOptions = true)
public final class Check implements Callable<Integer> {
  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description = "documents of recipes, gates, modules, sessions")
  private List<Path> files = List.of();

  @Spec private @Nullable CommandSpec spec;

  private final DocumentFiles documents;

  /** Checks files; those without an id get one of these in passing. */
  public Check(Supplier<UUID> ids) {
    this.documents = new DocumentFiles(ids);
  }

  @Override
  public Integer call() {
    CommandLine commandLine = Objects.requireNonNull(spec).commandLine();
    int code = CommandLine.ExitCode.OK;
    for (Path file : files) {
      try {
        check(file, commandLine.getOut());
      } catch (RefusedFile refused) {
        refused.lines().forEach(commandLine.getErr()::println);
        code = CommandLine.ExitCode.SOFTWARE;
      }
    }
    return code;
  }

  private void check(Path file, PrintWriter out) {
    Documents.Read<?> read = documents.read(file);
    if (read.thing() instanceof Recipe recipe) {
      List<String> missing = Resolution.of(recipe, GateFolder.beside(file, documents)).missing();
      out.println(file + ": a recipe, " + (missing.isEmpty() ? "complete" : "half-written"));
      missing.forEach(what -> out.println(file + ": no prediction yet: " + what));
    } else {
      out.println(file + ": a " + read.word());
    }
    read.notes().forEach(note -> out.println(file + ": " + note));
  }
}
