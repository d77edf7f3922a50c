package thudbook;

import java.time.InstantSource;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import thudbook.quantities.Refusal;

/** Runs the notebook until it is stopped. Its options are the table of settings. */
@Command(
    name = "serve",
    description = "Runs the notebook. Stop it with Ctrl-C.",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    footer = {
      "",
      "Each setting is also read from the environment: THUDBOOK_PORT, THUDBOOK_BASE_URL, …"
    })
final class Serve implements Callable<Integer> {
  private final Map<String, String> environment;
  private final Map<String, String> system;
  private final InstantSource clock;
  private final Supplier<UUID> ids;

  @Option(names = "--print-settings", description = "shows what is in force and stops")
  private boolean printSettings;

  @Spec private @Nullable CommandSpec spec;

  private Serve(
      Map<String, String> environment,
      Map<String, String> system,
      InstantSource clock,
      Supplier<UUID> ids) {
    this.environment = environment;
    this.system = system;
    this.clock = clock;
    this.ids = ids;
  }

  static CommandLine command(
      Map<String, String> environment,
      Map<String, String> system,
      InstantSource clock,
      Supplier<UUID> ids) {
    CommandLine command = new CommandLine(new Serve(environment, system, clock, ids));
    for (Setting setting : Setting.values()) {
      command
          .getCommandSpec()
          .addOption(
              OptionSpec.builder(setting.option())
                  .paramLabel("<" + setting.key() + ">")
                  .type(String.class)
                  .description(setting.meaning() + " (" + setting.usual() + ")")
                  .build());
    }
    return command;
  }

  @Override
  public Integer call() throws Exception {
    CommandLine commandLine = Objects.requireNonNull(spec).commandLine();
    Settings settings;
    try {
      settings = Settings.of(given(commandLine.getParseResult()), environment, system);
    } catch (Refusal refusal) {
      refusal.faults().forEach(fault -> commandLine.getErr().println(fault.message()));
      return CommandLine.ExitCode.USAGE;
    }
    if (printSettings) {
      settings.lines().forEach(commandLine.getOut()::println);
      return CommandLine.ExitCode.OK;
    }
    Notebook notebook = Notebook.open(settings, clock, ids);
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  notebook.close();
                  stopped.countDown();
                },
                "stop"));
    commandLine.getOut().println("Thudbook is ready at " + notebook.url());
    stopped.await();
    return CommandLine.ExitCode.OK;
  }

  private static Map<String, String> given(CommandLine.ParseResult parsed) {
    Map<String, String> given = new HashMap<>();
    for (Setting setting : Setting.values()) {
      if (parsed.hasMatchedOption(setting.option())) {
        given.put(setting.key(), parsed.matchedOptionValue(setting.option(), ""));
      }
    }
    return given;
  }
}
