package thudbook.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.jooq.Configuration;
import org.jooq.ConnectionProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thudbook.access.Hands;
import thudbook.envelopes.Drive;
import thudbook.equipment.Gate;
import thudbook.notebook.Acts;
import thudbook.pages.Pages;
import thudbook.recipes.Recipe;
import thudbook.recipes.StageEntry;
import thudbook.web.Server;

/**
 * The list of recipes asks the database as often for many rows as for few, also where every row is
 * half-written and every one on a gate of its own. Statements are counted at the driver, behind the
 * real server. Property tests.
 */
class ListPageLooksTest {
  @TempDir private Path folder;

  /** {@code on} is a tag that stands in the row; {@code monitors} stands in the notes alone. */
  @ParameterizedTest
  @ValueSource(strings = {"", "?q=on", "?q=monitors"})
  void asManyStatementsForManyRowsAsForFew(String search) throws Exception {
    int few = statements(10, 10, search);
    int many = statements(100, 40, search);
    assertThat(few).isPositive();
    assertThat(many).isEqualTo(few);
  }

  @Test
  void namesAreFoundTogetherAsEachIsFoundAlone() {
    try (Database database = Database.open(folder)) {
      Acts acts = Acts.on(database, InstantSource.fixed(Written.NOON), () -> {});
      Recipe one = halfWritten(1);
      Recipe two = halfWritten(2);
      acts.changes().write(Written.writes(List.of(), List.of(one, two)), Hands.OWNER, "test");
      List<String> names =
          List.of(one.slug(), two.id().toString().toUpperCase(Locale.ROOT), "nobody");
      assertThat(database.recipes().named(names).keySet())
          .isEqualTo(Set.copyOf(names.subList(0, 2)));
      database
          .recipes()
          .named(names)
          .forEach(
              (name, kept) ->
                  assertThat(kept).isEqualTo(database.recipes().find(name).orElseThrow()));
    }
  }

  private int statements(int recipes, int rows, String search) throws Exception {
    AtomicInteger statements = new AtomicInteger();
    InstantSource clock = InstantSource.fixed(Written.NOON);
    try (Database database = Database.open(folder.resolve("of-" + recipes))) {
      Acts acts = Acts.on(database, clock, () -> {});
      List<Gate> gates = new ArrayList<>();
      List<Recipe> written = new ArrayList<>();
      for (int i = 0; i < recipes; i++) {
        gates.add(Written.gate("gate-" + i, "Gate " + i));
        written.add(halfWritten(i));
      }
      acts.changes().write(Written.writes(gates, written), Hands.OWNER, "test");
      Pages pages = new Pages(database, acts, name -> "/" + name, clock, UUID::randomUUID, null);
      try (Server server =
          Server.start(
              new Server.Address(InetAddress.getLoopbackAddress(), 0, null, 4 << 20),
              pages,
              () -> "test",
              pages::addTo)) {
        count(database, statements);
        HttpResponse<String> page =
            HttpClient.newHttpClient()
                .send(
                    HttpRequest.newBuilder(URI.create(server.url() + search)).build(),
                    HttpResponse.BodyHandlers.ofString());
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.body().split("id=\"r-", -1)).hasSize(rows + 1);
      }
    }
    return statements.get();
  }

  private static Recipe halfWritten(int number) {
    return Written.recipe(
        "recipe-" + number,
        "Recipe " + number,
        List.of("on"),
        null,
        null,
        List.of(new StageEntry("gate-" + number, "quick", Drive.UNITY, null)));
  }

  /** Counts what readers prepare from now on. */
  private static void count(Database database, AtomicInteger statements) {
    Configuration reading = database.connections().reading().configuration();
    ConnectionProvider real = reading.connectionProvider();
    reading.set(
        new ConnectionProvider() {
          @Override
          public Connection acquire() {
            return counted(real.acquire(), statements);
          }

          @Override
          public void release(Connection connection) {
            try {
              connection.close();
            } catch (SQLException e) {
              throw new IllegalStateException(e);
            }
          }
        });
  }

  private static Connection counted(Connection real, AtomicInteger statements) {
    return (Connection)
        Proxy.newProxyInstance(
            Connection.class.getClassLoader(),
            new Class<?>[] {Connection.class},
            (proxy, method, values) -> {
              if (method.getName().endsWith("Statement")) {
                statements.incrementAndGet();
              }
              try {
                return method.invoke(real, values);
              } catch (InvocationTargetException e) {
                throw e.getTargetException();
              }
            });
  }
}
