package thudbook.documents.exchange;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import thudbook.documents.Documents;
import thudbook.documents.Identity;
import thudbook.documents.tree.Faults;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;
import thudbook.recipes.Recipe;

/**
 * Recipes as a table, a recipe a row. A cell is read as the field of a form is, so that a table, a
 * form and a document refuse the same; a number without a unit has that of its column.
 */
public final class RecipeTable {
  private static final int MOST_ROWS = 10_000;
  private static final int MOST_COLUMNS = 200;
  private static final int LONGEST = 4 << 20;

  /** Behind which a spreadsheet would calculate. */
  private static final Pattern FORMULA = Pattern.compile("(?s)'*[=+@\\t\\r-].*");

  private final String name;
  private final List<Column> columns = new ArrayList<>();
  private final List<Fault> faults = new ArrayList<>();

  private RecipeTable(String name) {
    this.name = name;
  }

  /**
   * What was read of a table.
   *
   * @param columns how each column was understood, a sentence each
   */
  record Read(List<Incoming> recipes, List<String> columns) {}

  /** The names of the columns that are written. */
  public static List<String> header() {
    return TableColumn.written().stream().map(TableColumn::header).toList();
  }

  /** A recipe as cells, in the order of {@link #header}. */
  public static List<String> cells(Recipe recipe) {
    Map<String, List<String>> form = Documents.form(recipe);
    return TableColumn.written().stream().map(column -> harmless(column.cell(form))).toList();
  }

  /** Text that no spreadsheet takes for a formula; numbers stay numbers. */
  private static String harmless(String cell) {
    return FORMULA.matcher(cell).matches() && !cell.matches("-?[0-9.]+") ? "'" + cell : cell;
  }

  /**
   * Reads a table.
   *
   * @throws Refusal with all faults, each with row and column
   */
  static Read read(String name, byte[] bytes, Identity identity) {
    return new RecipeTable(Faults.shown(name)).read(text(name, bytes), identity);
  }

  private static String text(String name, byte[] bytes) {
    if (bytes.length > LONGEST) {
      throw refusal(Refusal.Kind.TOO_LARGE, name, "a table has at most 4 MiB");
    }
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return text.startsWith("\ufeff") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw refusal(Refusal.Kind.MALFORMED, name, "this table is not UTF-8 text");
    }
  }

  private Read read(String text, Identity identity) {
    List<Incoming> recipes = new ArrayList<>();
    try (CSVParser parser = CSVParser.parse(new StringReader(text), format(text))) {
      for (CSVRecord row : parser) {
        if (columns.isEmpty()) {
          readHeader(row);
        } else if (row.stream().anyMatch(cell -> !cell.isBlank())) {
          if (recipes.size() >= MOST_ROWS) {
            throw refusal(Refusal.Kind.TOO_LARGE, name, "a table has at most 10,000 rows");
          }
          Incoming recipe = read(row, identity);
          if (recipe != null) {
            recipes.add(recipe);
          }
        }
      }
    } catch (IOException | IllegalStateException | UncheckedIOException e) {
      throw refusal(
          Refusal.Kind.MALFORMED, name, "this table can't be read: a quote is not closed");
    }
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.REFUSED_VALUES, faults);
    }
    return new Read(recipes, columns.stream().map(Column::words).toList());
  }

  /** The separator that the first line has most of. */
  private static CSVFormat format(String text) {
    String first = text.lines().findFirst().orElse("");
    char separator = ',';
    for (char other : new char[] {';', '\t'}) {
      if (count(first, other) > count(first, separator)) {
        separator = other;
      }
    }
    return CSVFormat.DEFAULT.builder().setDelimiter(separator).get();
  }

  private static long count(String line, char wanted) {
    return line.chars().filter(c -> c == wanted).count();
  }

  private void readHeader(CSVRecord row) {
    if (row.size() > MOST_COLUMNS) {
      throw refusal(Refusal.Kind.TOO_LARGE, name, "a table has at most 200 columns");
    }
    row.forEach(title -> columns.add(Column.of(title)));
    if (columns.stream().noneMatch(column -> TableColumn.TITLE == column.meaning())) {
      throw refusal(
          Refusal.Kind.REFUSED_VALUES, name, "a table needs a column with the name title");
    }
  }

  private @Nullable Incoming read(CSVRecord row, Identity identity) {
    Map<TableColumn, String> cells = new LinkedHashMap<>();
    for (int i = 0; i < Math.min(row.size(), columns.size()); i++) {
      TableColumn meaning = columns.get(i).meaning();
      String cell = row.get(i).strip();
      if (meaning != null && !cell.isEmpty()) {
        cells.put(meaning, columns.get(i).withUnit(cell));
      }
    }
    try {
      Recipe recipe = Documents.RECIPE.fromForm(TableColumn.form(cells), identity);
      return new Incoming(
          name + ", row " + row.getRecordNumber(),
          new Documents.Read<>(Documents.RECIPE, recipe, List.of()));
    } catch (Refusal refusal) {
      refusal.faults().forEach(fault -> faults.add(inRow(row.getRecordNumber(), fault)));
      return null;
    }
  }

  private Fault inRow(long row, Fault fault) {
    String column =
        columns.stream()
            .filter(one -> one.meaning() != null && one.meaning().isAt(fault.place()))
            .map(one -> ", " + one.title())
            .findFirst()
            .orElse("");
    String message = name + ", row " + row + column + ": " + fault.message();
    return new Fault(
        fault.place(), (int) row, fault.code(), fault.found(), fault.expected(), message);
  }

  private static Refusal refusal(Refusal.Kind kind, String name, String what) {
    return Refusal.of(kind, "bad-table", Faults.shown(name) + ": " + what);
  }

  /**
   * A column of a table that came in.
   *
   * @param title as it stands there
   * @param unit in its brackets; empty: none
   * @param meaning null: none that we know
   */
  private record Column(String title, String unit, @Nullable TableColumn meaning) {
    private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]*[.,]?[0-9]+");

    static Column of(String text) {
      String title = Faults.shown(text.strip());
      int open = title.lastIndexOf('(');
      boolean hasUnit = open > 0 && title.endsWith(")");
      String unit = hasUnit ? title.substring(open + 1, title.length() - 1).strip() : "";
      String words = hasUnit ? title.substring(0, open) : title;
      return new Column(title, unit, TableColumn.named(words));
    }

    String withUnit(String cell) {
      String written =
          cell.startsWith("'") && FORMULA.matcher(cell).matches() ? cell.substring(1) : cell;
      return unit.isEmpty() || !NUMBER.matcher(written).matches() ? written : written + " " + unit;
    }

    String words() {
      return meaning == null
          ? "“" + title + "” is not taken"
          : "“" + title + "” is " + meaning.header();
    }
  }
}
