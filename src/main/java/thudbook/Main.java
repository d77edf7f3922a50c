package thudbook;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import thudbook.commands.Backup;
import thudbook.commands.Check;
import thudbook.commands.Complaint;
import thudbook.commands.Find;
import thudbook.commands.Predict;
import thudbook.commands.Rehearse;
import thudbook.commands.Restore;
import thudbook.commands.Serve;
import thudbook.commands.Served;
import thudbook.commands.Verify;

/** Starts the program. The clock, randomness, environment and streams of the process stop here. */
@Command(
    name = "thudbook",
    description = "Patch notebook for percussion on hardware modular synthesizers.",
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    footer = {
      "",
      "Exit codes: 0, 1 for refused input with a line per fault, 2 for wrong usage.",
      "Thumps and levels are predictions: turn monitors down before you connect anything."
    })
public final class Main {
  private Main() {}

  /** Runs the command line and ends the process with its exit code. */
  public static void main(String[] args) {
    // Documents are UTF-8, and so is what is said about them, whatever the locale.
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    System.exit(commandLine(out, err, System.getenv()).execute(args));
  }

  /** The command line over these streams and this environment. */
  static CommandLine commandLine(
      PrintWriter out, PrintWriter err, Map<String, String> environment) {
    Map<String, String> system =
        System.getProperties().stringPropertyNames().stream()
            .collect(Collectors.toMap(Function.identity(), System::getProperty));
    Clock clock = Clock.systemUTC();
    Supplier<UUID> ids = UUID::randomUUID;
    Served.Opening opening = settings -> Notebook.open(settings, clock, ids);
    return new CommandLine(new Main())
        .addSubcommand(Serve.command(environment, system, opening))
        .addSubcommand(new Predict(ids))
        .addSubcommand(new Check(ids))
        .addSubcommand(new Backup(environment, system, clock))
        .addSubcommand(new Restore(environment, system, clock))
        .addSubcommand(new Verify(environment, system))
        .addSubcommand(new Find(environment, system))
        .addSubcommand(new Rehearse(opening))
        .setOut(out)
        .setErr(err)
        .setExecutionExceptionHandler(Complaint::of);
  }

  /** Reads the version from the manifest of the jar. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = Main.class.getPackage().getImplementationVersion();
      return new String[] {"Thudbook " + (version == null ? "(not packaged)" : version)};
    }
  }
}
