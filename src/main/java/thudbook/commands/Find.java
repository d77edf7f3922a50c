package thudbook.commands;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.StringJoiner;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import thudbook.access.Visitor;
import thudbook.library.Library;
import thudbook.library.Ordering;
import thudbook.library.RecipeList;
import thudbook.library.Wanted;
import thudbook.library.typed.SearchAddress;
import thudbook.library.typed.Typed;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.quantities.Dimension;
import thudbook.storage.Database;

/** Finds recipes in a notebook, also while it is being served. */
@Command(
    name = "find",
    description = {
      "Finds recipes in a notebook, also while it is being served. The search is typed as on the",
      "page: words, \"phrases\", not words, and sentences such as: hold over 80 ms on quick"
    },
    mixinStandardHelpOptions = true)
public final class Find implements Callable<Integer> {
  private static final int MOST = 200;

  private final Map<String, String> environment;
  private final Map<String, String> system;

  @Mixin private DataFolder data = new DataFolder();

  @Parameters(arity = "0..*", paramLabel = "WORDS", description = "what is looked for")
  private List<String> words = List.of();

  @Option(
      names = "--order",
      paramLabel = "ORDER",
      description = "newest, title, relevance, last-used, or a number such as hold or -hold")
  private @Nullable String order;

  @Option(
      names = "--limit",
      paramLabel = "COUNT",
      defaultValue = "20",
      description = "how many are shown, 1 to 200 (${DEFAULT-VALUE})")
  private int limit;

  @Spec private @Nullable CommandSpec spec;

  public Find(Map<String, String> environment, Map<String, String> system) {
    this.environment = environment;
    this.system = system;
  }

  @Override
  public Integer call() {
    CommandLine commandLine = Objects.requireNonNull(spec).commandLine();
    if (limit < 1 || limit > MOST) {
      throw new CommandLine.ParameterException(
          commandLine, "--limit: found " + limit + ", expected 1 to " + MOST);
    }
    Ordering ordering =
        order == null
            ? null
            : Ordering.ofKey(order)
                .orElseThrow(
                    () ->
                        new CommandLine.ParameterException(
                            commandLine,
                            "--order: found "
                                + order
                                + ", expected newest, title, relevance, last-used or a number"));
    SearchAddress search = new SearchAddress(String.join(" ", words), Wanted.ALL, ordering);
    Path folder = data.in(environment, system);
    Visitor visitor = Visitor.alone(Visitor.Way.COMMAND_LINE);
    return Database.find(folder, library -> find(library, search, visitor, commandLine));
  }

  private int find(
      Library library, SearchAddress search, Visitor visitor, CommandLine commandLine) {
    Typed typed = search.wanted(library::vocabulary);
    typed.notes().forEach(note -> commandLine.getErr().println(note.message()));
    Library.Page page =
        library.page(
            typed.wanted(), search.ordering(typed.wanted()), visitor.author(), limit, null);
    PrintWriter out = commandLine.getOut();
    page.rows().forEach(row -> out.println(line(row)));
    int total = page.found().total();
    out.println(
        total == 1
            ? "1 recipe"
            : page.rows().size() < total
                ? page.rows().size() + " of " + total + " recipes"
                : total + " recipes");
    return CommandLine.ExitCode.OK;
  }

  private static String line(RecipeList.Row row) {
    StringJoiner line = new StringJoiner("  ");
    line.add(row.slug()).add(row.title());
    if (!row.tags().isEmpty()) {
      line.add("[" + String.join(", ", row.tags()) + "]");
    }
    Metrics metrics = row.metrics();
    if (metrics != null) {
      metrics
          .get(Metric.HOLD)
          .ifPresent(value -> line.add("hold " + Dimension.TIME.say(rounded(value))));
      metrics
          .get(Metric.RELEASE_40)
          .ifPresent(value -> line.add("tail to -40 dB " + Dimension.TIME.say(rounded(value))));
    }
    return line.toString();
  }

  /** To a tenth of a millisecond. */
  private static double rounded(double seconds) {
    return Math.round(seconds * 10_000) / 10_000.0;
  }
}
