package thudbook.commands;

import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import thudbook.documents.Documents;
import thudbook.storage.Database;
import thudbook.storage.Verification;

/** Looks at everything in a notebook, also while it is being served. */
@Command(
    name = "verify",
    description = {
      "Looks at everything in a notebook, also while it is being served: the database itself, the",
      "hash of every revision and photo, whether each document reads and its columns follow from",
      "it, and whether each prediction is what is predicted today."
    },
    mixinStandardHelpOptions = true)
public final class Verify implements Callable<Integer> {
  private final Map<String, String> environment;
  private final Map<String, String> system;

  @Mixin private DataFolder data = new DataFolder();

  @Spec private @Nullable CommandSpec spec;

  public Verify(Map<String, String> environment, Map<String, String> system) {
    this.environment = environment;
    this.system = system;
  }

  @Override
  public Integer call() {
    CommandLine commandLine = Objects.requireNonNull(spec).commandLine();
    Path folder = data.in(environment, system);
    Verification.Findings findings = Database.verify(folder);
    findings.wrong().forEach(commandLine.getErr()::println);
    if (!findings.wrong().isEmpty()) {
      return CommandLine.ExitCode.SOFTWARE;
    }
    commandLine
        .getOut()
        .println(
            "Nothing is wrong: "
                + findings.count(Documents.GATE)
                + " gates, "
                + findings.count(Documents.RECIPE)
                + " recipes, "
                + findings.revisions()
                + " revisions, "
                + findings.predictions()
                + " predictions, "
                + findings.photos()
                + " photos");
    return CommandLine.ExitCode.OK;
  }
}
