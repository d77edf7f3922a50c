package thudbook.pages.sharing;

import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import thudbook.access.Author;
import thudbook.changes.Kept;
import thudbook.documents.exchange.RecipeTable;
import thudbook.library.Library;
import thudbook.library.Ordering;
import thudbook.library.RecipeList;
import thudbook.library.Wanted;
import thudbook.predictions.Metric;
import thudbook.predictions.Metrics;
import thudbook.recipes.Recipe;
import thudbook.recipes.RecipeStore;
import thudbook.wording.MetricWords;

/** All recipes as a table in CSV, with their predicted numbers; written while it is read. */
final class TableExport {
  private static final int ROWS_AT_ONCE = 200;
  private static final List<Metric> METRICS =
      List.of(
          Metric.PEAK_DB,
          Metric.ATTACK,
          Metric.HOLD,
          Metric.RELEASE_20,
          Metric.RELEASE_40,
          Metric.RELEASE_60,
          Metric.FLAT_TIME,
          Metric.DEAD_TIME,
          Metric.THUMP_PEAK);

  /** More digits than any ear, fewer than a number that looks measured. */
  private static final MathContext SIX_DIGITS = new MathContext(6);

  private final Library library;
  private final RecipeStore recipes;
  private final Author author;

  TableExport(Library library, RecipeStore recipes, Author author) {
    this.library = library;
    this.recipes = recipes;
    this.author = author;
  }

  void write(Writer out) throws IOException {
    try (CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
      List<String> header = new ArrayList<>(RecipeTable.header());
      METRICS.forEach(
          metric ->
              header.add("predicted " + MetricWords.of(metric).name() + " (" + unit(metric) + ")"));
      printer.printRecord(header);
      String after = null;
      do {
        Library.Page page = library.page(Wanted.ALL, Ordering.TITLE, author, ROWS_AT_ONCE, after);
        for (RecipeList.Row row : page.rows()) {
          Kept<Recipe> stored = recipes.find(row.id().toString()).orElse(null);
          if (stored != null) {
            List<String> cells = new ArrayList<>(RecipeTable.cells(stored.thing()));
            METRICS.forEach(metric -> cells.add(cell(row, metric)));
            printer.printRecord(cells);
          }
        }
        after = page.found().next();
      } while (after != null);
    }
  }

  private static String cell(RecipeList.Row row, Metric metric) {
    Metrics metrics = row.metrics();
    OptionalDouble value = metrics == null ? OptionalDouble.empty() : metrics.get(metric);
    if (value.isEmpty() || Double.isInfinite(value.getAsDouble())) {
      return "";
    }
    BigDecimal exact = BigDecimal.valueOf(value.getAsDouble());
    return exact
        .movePointRight(metric.unit().equals("s") ? 3 : 0)
        .round(SIX_DIGITS)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String unit(Metric metric) {
    return metric.unit().equals("s") ? "ms" : metric.unit();
  }
}
