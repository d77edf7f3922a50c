package thudbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Files that are no notebook, lack a table or are damaged, given to each command that opens one: a
 * sentence, and nothing is touched. Scenario tests.
 */
class ForeignFilesTest {
  private static final Path ORDERS = Path.of("src/test/resources/thudbook/storage");

  @TempDir private Path folder;

  private Path data = Path.of("");
  private Path file = Path.of("");

  private record Result(int code, String out, String err) {}

  @BeforeEach
  void aNotebook() throws IOException {
    data = Files.createDirectories(folder.resolve("data"));
    file = folder.resolve("given.db");
    Files.copy(ORDERS.resolve("order-5.db"), data.resolve("thudbook.db"));
  }

  private Result run(Path at, String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    List<String> all = new ArrayList<>(List.of(words));
    all.addAll(List.of("--data", at.toString()));
    int code =
        Main.commandLine(new PrintWriter(out, true), new PrintWriter(err, true), Map.of())
            .execute(all.toArray(String[]::new));
    return new Result(code, out.toString(), err.toString());
  }

  /** Restores what must be refused, and proves that the notebook's files are what they were. */
  private String refusedRestore() throws IOException {
    Map<String, String> before = contents(data);
    byte[] given = Files.readAllBytes(file);
    Result result = run(data, "restore", file.toString());
    assertThat(result.code()).isEqualTo(1);
    assertThat(result.out()).isEmpty();
    assertThat(contents(data)).isEqualTo(before);
    assertThat(file).hasBinaryContent(given);
    return result.err();
  }

  /** Every file but the lock and the library that the driver unpacks, in hexadecimal digits. */
  private static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path each : files.filter(Files::isRegularFile).toList()) {
        String name = folder.relativize(each).toString();
        if (!name.startsWith("native") && !name.endsWith(".lock")) {
          contents.put(name, HexFormat.of().formatHex(Files.readAllBytes(each)));
        }
      }
    }
    return contents;
  }

  private static void execute(Path file, String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  @Test
  void anEmptyFileIsNotRestored() throws IOException {
    Files.createFile(file);
    assertThat(refusedRestore())
        .isEqualTo("The file " + file + " is not a database: it is empty.\n");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 15, 16, 99, 100, 511, 512, 4096, 100_000})
  void aTextIsNotRestored(int length) throws IOException {
    Files.writeString(file, "Kick: decay 90 ms, \u00e9troit\n".repeat(4000).substring(0, length));
    assertThat(refusedRestore()).isEqualTo("The file " + file + " is not a database but a text.\n");
  }

  @Test
  void aTextThatBeginsAsADatabaseIsNotRestored() throws IOException {
    Files.writeString(file, "SQLite format 3\0" + "and then a shopping list\n".repeat(400));
    assertThat(refusedRestore()).contains(" is not a database, or is damaged").hasLineCount(1);
  }

  @Test
  void aZipIsNotRestored() throws IOException {
    Files.write(file, "PK\3\4 and so on".getBytes(StandardCharsets.ISO_8859_1));
    assertThat(refusedRestore()).contains(" is not a database but a zip file").hasLineCount(1);
  }

  @Test
  void aDatabaseWithoutTablesIsNotRestored() throws IOException, SQLException {
    execute(file, "CREATE TABLE gone (it INTEGER); DROP TABLE gone");
    assertThat(refusedRestore())
        .isEqualTo(
            "The file " + file + " is a database without tables, so there is no notebook in it.\n");
  }

  @Test
  void aDatabaseOfAnotherProgramIsNotRestored() throws IOException, SQLException {
    execute(file, "CREATE TABLE song (name TEXT); CREATE TABLE album (name TEXT)");
    assertThat(refusedRestore())
        .isEqualTo(
            "The file "
                + file
                + " is a database, but not of a notebook: it has the tables album, song.\n");
    execute(
        file,
        "CREATE TABLE flyway_schema_history (version TEXT, script TEXT, success INTEGER);"
            + " INSERT INTO flyway_schema_history VALUES ('4', 'V4__songs.sql', 1)");
    assertThat(refusedRestore()).contains("album, flyway_schema_history, song").hasLineCount(1);
    execute(
        file, "DROP TABLE flyway_schema_history; CREATE TABLE flyway_schema_history (x INTEGER)");
    assertThat(refusedRestore()).contains("not of a notebook").hasLineCount(1);
  }

  /** Each table of each version in turn is missing from a backup. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 4, 5})
  void aBackupThatLacksATableIsNotRestored(int order) throws IOException, SQLException {
    Path whole = ORDERS.resolve("order-" + order + ".db");
    for (String table : tables(Files.copy(whole, folder.resolve("whole.db")))) {
      Files.deleteIfExists(file);
      Files.copy(whole, file);
      execute(file, "PRAGMA foreign_keys = OFF; DROP TABLE " + table);
      assertThat(refusedRestore())
          .startsWith("The database " + file + " is damaged: the ")
          .contains("the table " + table + " is missing")
          .hasLineCount(1);
    }
  }

  private static List<String> tables(Path file) throws SQLException {
    List<String> tables = new ArrayList<>();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery(
                "SELECT name FROM pragma_table_list WHERE schema = 'main'"
                    + " AND type IN ('table', 'virtual')"
                    + " AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'flyway%' ORDER BY name")) {
      while (rows.next()) {
        tables.add(rows.getString(1));
      }
    }
    assertThat(tables).hasSizeGreaterThan(10);
    return tables;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '@',
      value = {
        "DROP TABLE prediction_before @ the table prediction_before is missing",
        "DROP INDEX recipe_tag_by_recipe @ the index recipe_tag_by_recipe is missing",
        "ALTER TABLE photo ADD COLUMN colour TEXT @ the table photo is not made as a notebook's",
        "CREATE TABLE song (name TEXT) @ the table song is none of a notebook's",
        "CREATE TRIGGER odd AFTER INSERT ON tag BEGIN DELETE FROM tag; END"
            + " @ the trigger odd is none of a notebook's",
        "DROP INDEX thing_in_bin; CREATE INDEX thing_in_bin ON thing (binned_at)"
            + " @ the index thing_in_bin is not made as a notebook's"
      })
  void aSchemaThatDiffersIsFoundAndNotRestored(String sql, String expected)
      throws IOException, SQLException {
    Files.copy(data.resolve("thudbook.db"), file);
    execute(file, sql);
    assertThat(refusedRestore()).contains(expected).hasLineCount(1);
    execute(data.resolve("thudbook.db"), sql);
    Result verified = run(data, "verify");
    assertThat(verified.code()).isEqualTo(1);
    assertThat(verified.out()).isEmpty();
    assertThat(verified.err()).contains(expected);
  }

  @Test
  void whatTheFolderHoldsInsteadOfANotebookIsSaidByEachCommandAndLeftAlone()
      throws IOException, SQLException {
    Path notebook = data.resolve("thudbook.db");
    Path recipe = Path.of("sample-library/recipes/slack-tide-kick.md");
    Path other = folder.resolve("other.db");
    execute(other, "CREATE TABLE song (name TEXT)");
    Path lacking = Files.copy(notebook, folder.resolve("lacking.db"));
    execute(lacking, "PRAGMA foreign_keys = OFF; DROP TABLE recipe_tag");
    Path text = Files.writeString(folder.resolve("text.db"), "a shopping list\n");
    for (Path instead : List.of(other, lacking, text)) {
      byte[] bytes = Files.readAllBytes(instead);
      Files.write(notebook, bytes);
      for (String[] words :
          List.of(
              new String[] {"verify"},
              new String[] {"find", "kick"},
              new String[] {"predict", recipe.toString()},
              new String[] {"serve", "--port", "0"})) {
        Result result = run(data, words);
        assertThat(result.code()).as(words[0] + " " + instead).isEqualTo(1);
        if (words[0].equals("verify") && instead.equals(lacking)) {
          assertThat(result.err())
              .isEqualTo(
                  "the table recipe_tag is missing\nthe index recipe_tag_by_recipe is missing\n");
        } else {
          assertThat(result.err()).as(words[0] + " " + instead).hasLineCount(1);
          assertThat(result.err()).contains(notebook.toString()).endsWith(".\n");
        }
      }
      assertThat(notebook).hasBinaryContent(bytes);
    }
  }

  /** Pages of seeded places are overwritten by seeded bytes. */
  @Test
  void aDamagedNotebookIsSaidInSentences() throws IOException {
    Random random = new Random(9);
    byte[] whole = Files.readAllBytes(data.resolve("thudbook.db"));
    int refused = 0;
    for (int round = 0; round < 40; round++) {
      byte[] damaged = whole.clone();
      byte[] noise = new byte[1 + random.nextInt(8192)];
      random.nextBytes(noise);
      int at = random.nextInt(damaged.length - noise.length);
      System.arraycopy(noise, 0, damaged, round % 4 == 0 ? 0 : at, noise.length);
      Files.write(file, damaged);
      Path home = Files.createDirectories(folder.resolve("damaged-" + round));
      Files.write(home.resolve("thudbook.db"), damaged);
      for (String[] words :
          List.of(
              new String[] {"verify"}, new String[] {"find", "kick"}, new String[] {"backup"})) {
        Result result = run(home, words);
        String what = words[0] + " in round " + round;
        assertThat(result.code()).as(what).isBetween(0, 1);
        assertThat(result.err()).as(what).doesNotContain("Exception", "[SQLITE");
        assertThat(result.err().isBlank()).as(what).isEqualTo(result.code() == 0);
      }
      // Noise may fall where nothing stands; what is verified decides.
      if (run(home, "verify").code() == 1) {
        assertThat(refusedRestore()).as("round " + round).isNotBlank();
        refused++;
      }
    }
    assertThat(refused).isGreaterThan(30);
  }
}
