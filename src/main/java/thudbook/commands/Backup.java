package thudbook.commands;

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
import thudbook.storage.keeping.Backups;

/** Copies a notebook, also while it is being served. */
@Command(
    name = "backup",
    description = {
      "Copies a notebook into one file, also while it is being served. The copy is verified before",
      "it has its name."
    },
    mixinStandardHelpOptions = true)
public final class Backup implements Callable<Integer> {
  private final Map<String, String> environment;
  private final Map<String, String> system;
  private final InstantSource clock;

  @Parameters(
      arity = "0..1",
      paramLabel = "FILE",
      description = "where to; without it a file in the folder backups of the data folder")
  private @Nullable Path file;

  @Mixin private DataFolder data = new DataFolder();

  @Spec private @Nullable CommandSpec spec;

  public Backup(Map<String, String> environment, Map<String, String> system, InstantSource clock) {
    this.environment = environment;
    this.system = system;
    this.clock = clock;
  }

  @Override
  public Integer call() {
    Backups backups = Database.backups(data.in(environment, system));
    Path made = file;
    if (made == null) {
      made = backups.make(Backups.Occasion.MANUAL, clock.instant()).file();
    } else {
      backups.copyTo(made);
    }
    Objects.requireNonNull(spec)
        .commandLine()
        .getOut()
        .println("The notebook is copied to " + made);
    return CommandLine.ExitCode.OK;
  }
}
