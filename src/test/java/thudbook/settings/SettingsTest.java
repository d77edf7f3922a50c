package thudbook.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/** The table of settings against the README, and what it takes and refuses. Property tests. */
class SettingsTest {
  private static final Map<String, String> LINUX =
      Map.of("os.name", "Linux", "user.home", "/home/oona");
  private static final Pattern ROW = Pattern.compile("\\| `([a-z-]+)` \\| (.+) \\| (.+) \\|");

  @Test
  void theReadmeHasTheSameTable() throws IOException {
    List<String> readme = new ArrayList<>();
    String settings =
        Files.readString(Path.of("README.md"))
            .split("\n## Settings\n", -1)[1]
            .split("\n## ", -1)[0];
    for (String line : settings.split("\n", -1)) {
      Matcher row = ROW.matcher(line);
      if (row.matches()) {
        readme.add(plain(row.group(1) + ": " + row.group(2) + ": " + row.group(3)));
      }
    }
    List<String> code = new ArrayList<>();
    for (Setting setting : Setting.values()) {
      code.add(plain(setting.key() + ": " + setting.usual() + ": " + setting.meaning()));
    }
    assertThat(readme).isEqualTo(code);
  }

  private static String plain(String text) {
    return text.replace("`", "");
  }

  @Test
  void withoutAnythingTheDefaultsAreInForce() {
    Settings settings = Settings.of(Map.of(), Map.of(), LINUX);
    assertThat(settings.port()).isEqualTo(8741);
    assertThat(settings.listen().getHostAddress()).isEqualTo("127.0.0.1");
    assertThat(settings.data()).isEqualTo(Path.of("/home/oona/.local/share/thudbook"));
    assertThat(settings.samples()).isTrue();
    assertThat(settings.baseUrl()).isNull();
    assertThat(settings.uploadLimitBytes()).isEqualTo(32_000_000);
  }

  @Test
  void anOptionGoesBeforeTheEnvironment() {
    Map<String, String> environment =
        Map.of("THUDBOOK_PORT", "9000", "THUDBOOK_UPLOAD_LIMIT", "1.5 MB");
    Settings settings = Settings.of(Map.of("port", "9001"), environment, LINUX);
    assertThat(settings.port()).isEqualTo(9001);
    assertThat(settings.uploadLimitBytes()).isEqualTo(1_500_000);
  }

  @Test
  void allFaultsAreToldAtOnceWithTheirPlace() {
    Map<String, String> options = Map.of("port", "70000", "listen", "0.0.0.0", "samples", "maybe");
    Map<String, String> environment =
        Map.of("THUDBOOK_BASE_URL", "notebook", "THUDBOOK_UPLOAD_LIMIT", "32");
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> Settings.of(options, environment, LINUX));
    assertThat(refusal.faults())
        .extracting(Fault::place)
        .containsExactly(
            "--port", "--listen", "--samples", "THUDBOOK_BASE_URL", "THUDBOOK_UPLOAD_LIMIT");
    assertThat(refusal.faults())
        .extracting(Fault::message)
        .first()
        .isEqualTo("--port: found 70000, expected a port from 0 to 65535");
  }

  @ParameterizedTest
  @CsvSource({
    "listen, 192.168.1.5",
    "listen, ::",
    "listen, example.org",
    "listen, ''",
    "port, -1",
    "port, 8741x",
    "data, ' '",
    "base-url, ftp://notebook.example",
    "base-url, http://notebook.example/path",
    "base-url, http://u@notebook.example/",
    "keep-backups, -1",
    "keep-backups, 1000",
    "keep-backups, daily",
    "upload-limit, 2 GB",
    "upload-limit, 0 MB",
    "upload-limit, -1 MB"
  })
  void refused(String name, String value) {
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class, () -> Settings.of(Map.of(name, value), Map.of(), LINUX));
    assertThat(refusal.faults()).hasSize(1);
    assertThat(refusal.faults().get(0).found()).isEqualTo(value);
  }

  @ParameterizedTest
  @CsvSource({"127.0.0.1", "localhost", "::1", "127.1.2.3"})
  void loopbackIsTaken(String address) {
    Settings settings = Settings.of(Map.of("listen", address), Map.of(), LINUX);
    assertThat(settings.listen().isLoopbackAddress()).isTrue();
  }

  @Test
  void aBaseUrlHasASlashAtItsEnd() {
    Map<String, String> options = Map.of("base-url", "https://notebook.example");
    assertThat(Settings.of(options, Map.of(), LINUX).baseUrl())
        .isEqualTo(URI.create("https://notebook.example/"));
  }

  @Test
  void theDataFolderFollowsThePlatform() {
    assertThat(Settings.of(Map.of(), Map.of("XDG_DATA_HOME", "/data"), LINUX).data())
        .isEqualTo(Path.of("/data/thudbook"));
    assertThat(Settings.of(Map.of(), Map.of("XDG_DATA_HOME", "relative"), LINUX).data())
        .isEqualTo(Path.of("/home/oona/.local/share/thudbook"));
    Map<String, String> mac = Map.of("os.name", "Mac OS X", "user.home", "/Users/oona");
    assertThat(Settings.of(Map.of(), Map.of(), mac).data())
        .isEqualTo(Path.of("/Users/oona/Library/Application Support/Thudbook"));
    Map<String, String> windows = Map.of("os.name", "Windows 11", "user.home", "/home/oona");
    assertThat(Settings.of(Map.of(), Map.of("APPDATA", "/roaming"), windows).data())
        .isEqualTo(Path.of("/roaming/Thudbook"));
  }

  @Test
  void whatIsInForceIsShownOneLineEach() {
    assertThat(Settings.of(Map.of("samples", "no"), Map.of(), LINUX).lines())
        .containsExactly(
            "port          8741",
            "listen        127.0.0.1",
            "data          /home/oona/.local/share/thudbook",
            "samples       no",
            "base-url      from listen and port",
            "keep-backups  14",
            "upload-limit  32 MB");
  }
}
