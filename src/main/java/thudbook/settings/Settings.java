package thudbook.settings;

import java.math.BigDecimal;
import java.net.InetAddress;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import thudbook.quantities.Fault;
import thudbook.quantities.Refusal;

/**
 * The settings that are in force.
 *
 * @param port 0 takes a free one
 * @param listen a loopback address
 * @param data folder of the database
 * @param samples whether an empty database is filled with the sample library
 * @param baseUrl null: from listen and port
 * @param keepBackups how many daily backups are kept; 0: none are made
 * @param uploadLimitBytes largest body of a request
 */
public record Settings(
    int port,
    InetAddress listen,
    Path data,
    boolean samples,
    @Nullable URI baseUrl,
    int keepBackups,
    long uploadLimitBytes) {

  /**
   * Reads the settings: an option goes before the environment, the environment before the default.
   *
   * @param options values by name of the setting, as given on the command line
   * @param environment the variables of the process
   * @param system the properties of the platform: {@code user.home}, {@code os.name}
   * @throws Refusal with every value that can't be taken
   */
  public static Settings of(
      Map<String, String> options, Map<String, String> environment, Map<String, String> system) {
    Map<Setting, Object> values = new EnumMap<>(Setting.class);
    List<Fault> faults = new ArrayList<>();
    for (Setting setting : Setting.values()) {
      String given = options.get(setting.key());
      String place = given == null ? setting.variable() : setting.option();
      String text = given == null ? environment.get(setting.variable()) : given;
      try {
        if (text != null) {
          values.put(setting, setting.read(text));
        } else if (setting == Setting.DATA) {
          values.put(setting, usualData(environment, system));
        } else if (setting != Setting.BASE_URL) {
          values.put(setting, setting.read(setting.usual()));
        }
      } catch (IllegalArgumentException e) {
        String found = String.valueOf(text);
        String expected = String.valueOf(e.getMessage());
        faults.add(
            new Fault(
                place,
                0,
                "setting",
                found,
                expected,
                place + ": found " + found + ", expected " + expected));
      }
    }
    if (!faults.isEmpty()) {
      throw new Refusal(Refusal.Kind.REFUSED_VALUES, faults);
    }
    return new Settings(
        (Integer) Objects.requireNonNull(values.get(Setting.PORT)),
        (InetAddress) Objects.requireNonNull(values.get(Setting.LISTEN)),
        (Path) Objects.requireNonNull(values.get(Setting.DATA)),
        (Boolean) Objects.requireNonNull(values.get(Setting.SAMPLES)),
        (URI) values.get(Setting.BASE_URL),
        (Integer) Objects.requireNonNull(values.get(Setting.KEEP_BACKUPS)),
        (Long) Objects.requireNonNull(values.get(Setting.UPLOAD_LIMIT)));
  }

  /** Where devices other than this one reach the notebook; null: nowhere. */
  public @Nullable URI reachedAt() {
    return baseUrl == null || SettingValues.isLoopback(baseUrl.getHost())
        ? null
        : baseUrl.resolve("/");
  }

  /** One line per setting with its value, as {@code --print-settings} shows them. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    for (Setting setting : Setting.values()) {
      String value =
          switch (setting) {
            case PORT -> String.valueOf(port);
            case LISTEN -> listen.getHostAddress();
            case DATA -> data.toAbsolutePath().normalize().toString();
            case SAMPLES -> samples ? "yes" : "no";
            case BASE_URL -> baseUrl == null ? setting.usual() : baseUrl.toString();
            case KEEP_BACKUPS -> String.valueOf(keepBackups);
            case UPLOAD_LIMIT -> size(uploadLimitBytes);
          };
      lines.add(String.format(Locale.ROOT, "%-13s %s", setting.key(), value));
    }
    return lines;
  }

  private static String size(long bytes) {
    return bytes % 1_000_000 == 0
        ? bytes / 1_000_000 + " MB"
        : BigDecimal.valueOf(bytes, 3).stripTrailingZeros().toPlainString() + " kB";
  }

  /** Where programs keep what they know, by the convention of the platform. */
  private static Path usualData(Map<String, String> environment, Map<String, String> system) {
    Path home = Path.of(system.getOrDefault("user.home", "."));
    String platform = system.getOrDefault("os.name", "").toLowerCase(Locale.ROOT);
    if (platform.startsWith("mac")) {
      return home.resolve("Library/Application Support/Thudbook");
    }
    if (platform.startsWith("windows")) {
      String roaming = environment.get("APPDATA");
      return (roaming == null ? home.resolve("AppData/Roaming") : Path.of(roaming))
          .resolve("Thudbook");
    }
    String shared = environment.get("XDG_DATA_HOME");
    // The convention ignores paths that are not absolute.
    return (shared == null || !shared.startsWith("/")
            ? home.resolve(".local/share")
            : Path.of(shared))
        .resolve("thudbook");
  }
}
