package thudbook.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.sqlite.ProgressHandler;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import thudbook.access.Hands;
import thudbook.changes.Change;
import thudbook.changes.Changes;
import thudbook.changes.Kept;
import thudbook.documents.Documents;
import thudbook.documents.NounDocument;
import thudbook.recipes.Repredictions;
import thudbook.storage.keeping.DatabaseFile;
import thudbook.storage.keeping.Schema;

/** Scenario: databases of earlier orders become of this one, with all that was ever written. */
class MigrationTest {
  private static final Path ORDERS = Path.of("src/test/resources/thudbook/storage");

  /** How often SQLite asks whether to go on: after so many of its instructions. */
  private static final int INSTRUCTIONS = 50;

  private static final int KILLED = 9;

  /** What there was before, by the tables that an earlier order may lack. */
  private static final Map<String, List<String>> BEFORE = new LinkedHashMap<>();

  /** The same questions to the tables of today. */
  private static final Map<String, String> NOW =
      Map.of(
          "things",
          "SELECT noun, uuid, slug, title, title_key, version, head, binned_at FROM thing",
          "recipes",
          "SELECT uuid, author, created_at, changed_at FROM thing WHERE noun = 'recipe'",
          "revisions",
          "SELECT noun, uuid, number, change, sha256, document"
              + " FROM revision JOIN thing ON thing.id = revision.thing",
          "slugs",
          "SELECT thing_slug.noun, thing_slug.slug, uuid"
              + " FROM thing_slug JOIN thing ON thing.id = thing_slug.thing",
          "binnings",
          "SELECT binning.id, change, noun, uuid, into_bin"
              + " FROM binning JOIN thing ON thing.id = binning.thing",
          "changes",
          "SELECT id, at, author, what, undone_by FROM change",
          "favourites",
          "SELECT member, uuid, favourite, last_used_at"
              + " FROM mark JOIN thing ON thing.id = mark.recipe",
          "recalls",
          "SELECT recall.uuid, recipe.uuid, revision, session.uuid, recall.author, begun_at,"
              + " finished_at, step, marks FROM recall"
              + " JOIN thing AS recipe ON recipe.id = recall.recipe"
              + " LEFT JOIN thing AS session ON session.id = recall.session",
          "drafts",
          "SELECT * FROM draft",
          "photos",
          "SELECT sha256, ending, added_at FROM photo");

  static {
    String thing = "uuid, slug, title, title_key, version, head, binned_at FROM ";
    BEFORE.put(
        "things",
        List.of(
            "SELECT 'recipe', " + thing + "recipe",
            "SELECT 'gate', " + thing + "gate",
            "SELECT noun, " + thing + "document"));
    BEFORE.put("recipes", List.of("SELECT uuid, author, created_at, changed_at FROM recipe"));
    BEFORE.put(
        "revisions",
        List.of(
            "SELECT 'recipe', uuid, number, change, sha256, document"
                + " FROM recipe_revision JOIN recipe ON recipe.id = recipe",
            "SELECT 'gate', uuid, number, change, sha256, document"
                + " FROM gate_revision JOIN gate ON gate.id = gate",
            "SELECT noun, uuid, number, change, sha256, text"
                + " FROM document_revision JOIN document ON document.id = document"));
    BEFORE.put(
        "slugs",
        List.of(
            "SELECT 'recipe', recipe_slug.slug, uuid"
                + " FROM recipe_slug JOIN recipe ON recipe.id = recipe",
            "SELECT 'gate', gate_slug.slug, uuid FROM gate_slug JOIN gate ON gate.id = gate",
            "SELECT document.noun, document_slug.slug, uuid"
                + " FROM document_slug JOIN document ON document.id = document"));
    BEFORE.put(
        "binnings",
        List.of(
            "SELECT binning.id, change, 'recipe', uuid, into_bin"
                + " FROM binning JOIN recipe ON recipe.id = recipe",
            "SELECT binning.id, change, 'gate', uuid, into_bin"
                + " FROM binning JOIN gate ON gate.id = gate",
            "SELECT binning.id, change, noun, uuid, into_bin"
                + " FROM binning JOIN document ON document.id = document"));
    BEFORE.put("changes", List.of("SELECT id, at, author, what, undone_by FROM change"));
    BEFORE.put(
        "favourites",
        List.of(
            "SELECT member, uuid, favourite, last_used_at"
                + " FROM mark JOIN recipe ON recipe.id = recipe"));
    BEFORE.put(
        "recalls",
        List.of(
            "SELECT recall.uuid, recipe.uuid, revision, document.uuid, recall.author, begun_at,"
                + " finished_at, step, marks FROM recall JOIN recipe ON recipe.id = recipe"
                + " LEFT JOIN document ON document.id = session"));
    BEFORE.put("drafts", List.of("SELECT * FROM draft"));
    BEFORE.put("photos", List.of("SELECT sha256, ending, added_at FROM photo"));
  }

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"order-1", "order-2", "order-4", "order-4-used"})
  @Timeout(value = 4, unit = TimeUnit.MINUTES)
  void everythingIsThereAndWhatWasDoneCanBeUndone(String name) throws Exception {
    Path file = Files.copy(ORDERS.resolve(name + ".db"), folder.resolve("thudbook.db"));
    Map<String, Set<String>> before = before(file);
    assertThat(before.get("revisions")).isNotEmpty();
    try (Database database = Database.open(folder)) {
      assertThat(now(file)).isEqualTo(before);
      for (NounDocument<?> noun : Documents.NOUNS) {
        assertThat(database.things(noun).all()).allMatch(kept -> isItself(noun, kept));
      }
      try (Repredictions work = new Repredictions(database.predictions(), database.gates())) {
        work.start();
        while (!database.predictions().marked(0, 1).isEmpty()) {
          Thread.sleep(20);
        }
      }
      assertThat(Database.verify(folder).wrong()).isEmpty();
      undoAll(Written.acts(database, () -> Written.NOON, () -> {}));
      for (NounDocument<?> noun : Documents.NOUNS) {
        assertThat(database.things(noun).all()).isEmpty();
      }
    }
    assertThat(Database.verify(folder).wrong()).isEmpty();
  }

  private static boolean isItself(NounDocument<?> noun, Kept<?> kept) {
    return noun.read(kept.document()).equals(kept.thing());
  }

  /** Undoes everything, newest first, but what was undone and what undid it. */
  private static void undoAll(Changes acts) {
    for (Change change : acts.newest(1000)) {
      if (change.undoneBy() == null && !change.what().startsWith("undid: ")) {
        assertThat(acts.obstacles(change.id())).as(change.what()).isEmpty();
        acts.undo(change.id(), Hands.OWNER);
      }
    }
  }

  @Test
  @Timeout(value = 10, unit = TimeUnit.MINUTES)
  void aMigrationThatIsKilledLeavesTheOldOrTheNew() throws Exception {
    Path original = ORDERS.resolve("order-4-used.db");
    Path file = folder.resolve("thudbook.db");
    Files.copy(original, file);
    Map<String, Set<String>> before = before(file);
    Process whole = OtherProcess.start(Migrating.class, file.toString(), "0");
    List<String> told = whole.inputReader(StandardCharsets.UTF_8).lines().toList();
    long steps = Long.parseLong(told.get(told.size() - 1));
    assertThat(whole.waitFor()).isZero();
    assertThat(now(file)).isEqualTo(before);
    Random random = new Random(20_261_128);
    int old = 0;
    for (int kill = 0; kill < 20; kill++) {
      Path home = Files.createDirectory(folder.resolve("killed-" + kill));
      Path killed = Files.copy(original, home.resolve("thudbook.db"));
      long step = 1 + (long) (random.nextDouble() * (steps - 1));
      Process process =
          OtherProcess.start(Migrating.class, killed.toString(), String.valueOf(step));
      assertThat(process.waitFor()).isEqualTo(KILLED);
      boolean isOld = versionOf(killed) < Schema.NEWEST;
      old += isOld ? 1 : 0;
      assertThat(isOld ? before(killed) : now(killed)).as("step %d", step).isEqualTo(before);
      try (Database database = Database.open(home)) {
        assertThat(now(killed)).isEqualTo(before);
        assertThat(database.changes().isEmpty()).isFalse();
      }
      assertThat(Database.verify(home).wrong()).isEmpty();
    }
    assertThat(old).isPositive();
  }

  /** Migrates a file and dies without a word at a step, or tells how many there were. */
  static final class Migrating {
    public static void main(String[] arguments) throws SQLException {
      long last = Long.parseLong(arguments[1]);
      AtomicLong steps = new AtomicLong();
      Schema.bringUpToDate(
          Path.of(arguments[0]), new Counted(Path.of(arguments[0]), steps, last), FactRows::fill);
      System.out.println(steps.get());
    }
  }

  /** Connections that count the steps of SQLite. */
  private static final class Counted implements DataSource {
    private final SQLiteDataSource source;
    private final AtomicLong steps;
    private final long last;

    Counted(Path file, AtomicLong steps, long last) {
      SQLiteConfig config = new SQLiteConfig();
      config.enforceForeignKeys(true);
      config.setJournalMode(SQLiteConfig.JournalMode.WAL);
      source = new SQLiteDataSource(config);
      source.setUrl("jdbc:sqlite:" + file);
      this.steps = steps;
      this.last = last;
    }

    @Override
    public Connection getConnection() throws SQLException {
      Connection connection = source.getConnection();
      ProgressHandler.setHandler(
          connection,
          INSTRUCTIONS,
          new ProgressHandler() {
            @Override
            protected int progress() {
              if (steps.incrementAndGet() == last) {
                Runtime.getRuntime().halt(KILLED);
              }
              return 0;
            }
          });
      return connection;
    }

    @Override
    public Connection getConnection(String user, String password) throws SQLException {
      return getConnection();
    }

    @Override
    public PrintWriter getLogWriter() throws SQLException {
      return source.getLogWriter();
    }

    @Override
    public void setLogWriter(PrintWriter out) throws SQLException {
      source.setLogWriter(out);
    }

    @Override
    public void setLoginTimeout(int seconds) throws SQLException {
      source.setLoginTimeout(seconds);
    }

    @Override
    public int getLoginTimeout() throws SQLException {
      return source.getLoginTimeout();
    }

    @Override
    public java.util.logging.Logger getParentLogger() {
      return java.util.logging.Logger.getGlobal();
    }

    @Override
    public <T> T unwrap(Class<T> type) throws SQLException {
      return source.unwrap(type);
    }

    @Override
    public boolean isWrapperFor(Class<?> type) throws SQLException {
      return source.isWrapperFor(type);
    }
  }

  private static int versionOf(Path file) throws SQLException {
    try (Connection connection = DatabaseFile.open(file)) {
      return Schema.versionOf(connection);
    }
  }

  private static Map<String, Set<String>> before(Path file) throws SQLException, IOException {
    Map<String, Set<String>> found = new LinkedHashMap<>();
    try (Connection connection = DatabaseFile.open(file)) {
      for (var question : BEFORE.entrySet()) {
        Set<String> rows = new TreeSet<>();
        for (String sql : question.getValue()) {
          rows.addAll(rows(connection, sql));
        }
        found.put(question.getKey(), rows);
      }
    }
    return found;
  }

  private static Map<String, Set<String>> now(Path file) throws SQLException {
    Map<String, Set<String>> found = new LinkedHashMap<>();
    try (Connection connection = DatabaseFile.open(file)) {
      for (var question : NOW.entrySet()) {
        found.put(question.getKey(), new TreeSet<>(rows(connection, question.getValue())));
      }
    }
    return found;
  }

  /** The rows of a query; none if an earlier order lacks one of its tables or columns. */
  private static List<String> rows(Connection connection, String sql) throws SQLException {
    List<String> found = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      int columns = rows.getMetaData().getColumnCount();
      while (rows.next()) {
        List<String> row = new ArrayList<>();
        for (int i = 1; i <= columns; i++) {
          row.add(String.valueOf(rows.getObject(i)));
        }
        found.add(String.join(" | ", row));
      }
    } catch (SQLException e) {
      if (!e.getMessage().contains("no such")) {
        throw e;
      }
    }
    return found;
  }
}
