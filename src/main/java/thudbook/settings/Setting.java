package thudbook.settings;

import java.util.Locale;

/**
 * The table of settings: name, default, meaning, and the check that a value must pass. Each is
 * given as {@code --name value} or as environment variable {@code THUDBOOK_NAME}.
 */
public enum Setting {
  PORT("port", "8741", "port to listen on; 0 takes a free one"),
  LISTEN("listen", "127.0.0.1", "address to listen on; anything but loopback is refused"),
  DATA("data", "~/.local/share/thudbook", "folder of the database; created if missing"),
  SAMPLES(
      "samples", "yes", "loads the sample library once into an empty database; `no` starts empty"),
  BASE_URL("base-url", "from listen and port", "what links and printed codes point to"),
  KEEP_BACKUPS("keep-backups", "14", "daily backups kept; 0 makes none"),
  UPLOAD_LIMIT("upload-limit", "32 MB", "largest body of a request");

  private final String key;
  private final String usual;
  private final String meaning;

  Setting(String key, String usual, String meaning) {
    this.key = key;
    this.usual = usual;
    this.meaning = meaning;
  }

  /** The name, such as {@code base-url}. */
  public String key() {
    return key;
  }

  /** The default as people write it; for {@link #DATA} that of Linux. */
  public String usual() {
    return usual;
  }

  /** What it is for, in a few words. */
  public String meaning() {
    return meaning;
  }

  /** The option of the command line. */
  public String option() {
    return "--" + key;
  }

  /** The environment variable. */
  String variable() {
    return "THUDBOOK_" + key.replace('-', '_').toUpperCase(Locale.ROOT);
  }

  /**
   * The value that a text stands for.
   *
   * @throws IllegalArgumentException saying what was expected
   */
  Object read(String text) {
    return switch (this) {
      case PORT -> SettingValues.port(text);
      case LISTEN -> SettingValues.loopback(text);
      case DATA -> SettingValues.folder(text);
      case SAMPLES -> SettingValues.yesOrNo(text);
      case BASE_URL -> SettingValues.url(text);
      case KEEP_BACKUPS -> SettingValues.count(text);
      case UPLOAD_LIMIT -> SettingValues.bytes(text);
    };
  }
}
