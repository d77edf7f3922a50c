package thudbook.commands;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import thudbook.quantities.Refusal;
import thudbook.settings.Setting;
import thudbook.settings.Settings;

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
public final class Serve implements Callable<Integer> {
  private final Map<String, String> environment;
  private final Map<String, String> system;
  private final Served.Opening opening;

  @Option(names = "--print-settings", description = "shows what is in force and stops")
  private boolean printSettings;

  @Spec private @Nullable CommandSpec spec;

  private Serve(
      Map<String, String> environment, Map<String, String> system, Served.Opening opening) {
    this.environment = environment;
    this.system = system;
    this.opening = opening;
  }

  public static CommandLine command(
      Map<String, String> environment, Map<String, String> system, Served.Opening opening) {
    CommandLine command = new CommandLine(new Serve(environment, system, opening));
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
    Served notebook = opening.open(settings);
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
