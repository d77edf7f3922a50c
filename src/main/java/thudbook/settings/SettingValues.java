package thudbook.settings;

import java.math.BigDecimal;
import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the values of settings; each method says in its exception what was expected. */
final class SettingValues {
  private static final Pattern ADDRESS = Pattern.compile("localhost|[0-9.]+|[0-9a-fA-F:]+");
  private static final Pattern SIZE = Pattern.compile("(\\d{1,9}(?:\\.\\d{1,3})?) ?(kB|KB|MB|GB)");
  private static final long LARGEST_BODY = 1_000_000_000;
  private static final long SMALLEST_BODY = 1_000;

  private SettingValues() {}

  static Integer port(String text) {
    if (text.matches("\\d{1,5}") && Integer.parseInt(text) <= 65_535) {
      return Integer.valueOf(text);
    }
    throw expected("a port from 0 to 65535");
  }

  static Integer count(String text) {
    if (text.matches("\\d{1,3}")) {
      return Integer.valueOf(text);
    }
    throw expected("a whole number from 0 to 999");
  }

  /** Whether a host of an address is this machine itself, by its name or number. */
  static boolean isLoopback(String host) {
    return host.equalsIgnoreCase("localhost")
        || host.equals("[::1]")
        || host.matches("127(\\.\\d{1,3}){3}");
  }

  /** Names other than localhost are not looked up: what they stand for can change. */
  static InetAddress loopback(String text) {
    if (ADDRESS.matcher(text).matches()) {
      try {
        InetAddress address = InetAddress.getByName(text);
        if (address.isLoopbackAddress()) {
          return address;
        }
      } catch (UnknownHostException e) {
        throw expected("a loopback address such as 127.0.0.1 or ::1");
      }
    }
    throw expected(
        "a loopback address such as 127.0.0.1 or ::1; there are no logins yet, so nobody else may"
            + " reach the notebook");
  }

  static Path folder(String text) {
    try {
      if (!text.isBlank()) {
        return Path.of(text);
      }
    } catch (InvalidPathException e) {
      throw expected("a folder");
    }
    throw expected("a folder");
  }

  static Boolean yesOrNo(String text) {
    return switch (text.toLowerCase(Locale.ROOT)) {
      case "yes" -> true;
      case "no" -> false;
      default -> throw expected("yes or no");
    };
  }

  static URI url(String text) {
    String expected = "an address such as https://notebook.example/, without a path";
    try {
      URI url = new URI(text);
      boolean web = "http".equals(url.getScheme()) || "https".equals(url.getScheme());
      boolean bare =
          url.getUserInfo() == null && url.getQuery() == null && url.getFragment() == null;
      String path = url.getPath();
      if (web && bare && url.getHost() != null && (path.isEmpty() || path.equals("/"))) {
        return new URI(url.getScheme(), url.getAuthority(), "/", null, null);
      }
    } catch (URISyntaxException e) {
      throw expected(expected);
    }
    throw expected(expected);
  }

  static Long bytes(String text) {
    Matcher matcher = SIZE.matcher(text.trim());
    if (matcher.matches()) {
      int zeros =
          switch (matcher.group(2)) {
            case "MB" -> 6;
            case "GB" -> 9;
            default -> 3;
          };
      BigDecimal bytes = new BigDecimal(matcher.group(1)).movePointRight(zeros);
      if (bytes.compareTo(BigDecimal.valueOf(SMALLEST_BODY)) >= 0
          && bytes.compareTo(BigDecimal.valueOf(LARGEST_BODY)) <= 0) {
        return bytes.longValueExact();
      }
    }
    throw expected("a size from 1 kB to 1 GB, such as 32 MB");
  }

  private static IllegalArgumentException expected(String what) {
    return new IllegalArgumentException(what);
  }
}
