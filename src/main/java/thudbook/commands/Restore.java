package thudbook.commands;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thudbook.storage.Database;

/** Puts a backup in the place of a notebook that is not being served. */
@Command(
    name = "restore",
    description = {
      "Puts a backup in the place of a notebook that is not being served. The backup is verified",
      "first, and what it replaces is kept beside it."
    },
    mixinStandardHelpOptions = true)
public final class Restore implements Callable<Integer> {
  private final Map<String, String> environment;
  private final Map<String, String> system;
  private final InstantSource clock;

  @Parameters(paramLabel = "FILE", description = "a backup")
  private Path file = Path.of("");

  @Mixin private DataFolder data = new DataFolder();

  @Spec private @Nullable CommandSpec spec;

  public Restore(Map<String, String> environment, Map<String, String> system, InstantSource clock) {
    this.environment = environment;
    this.system = system;
    this.clock = clock;
  }

  @Override
  public Integer call() {
    PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
    Path folder = data.in(environment, system);
    Database.restore(file, folder, clock.instant())
        .ifPresent(kept -> out.println("What was there before is kept in " + kept));
    out.println("The notebook in " + folder + " is now that of " + file);
    return CommandLine.ExitCode.OK;
  }
}
