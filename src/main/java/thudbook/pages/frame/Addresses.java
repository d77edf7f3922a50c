package thudbook.pages.frame;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.commonmark.renderer.html.UrlSanitizer;

/**
 * Which addresses notes may lead to: the web, mail and the notebook itself. Pictures come from the
 * notebook only, so that opening a page tells nobody else.
 */
final class Addresses implements UrlSanitizer {
  private static final Pattern SCHEME =
      Pattern.compile("([a-zA-Z][a-zA-Z0-9+.-]*):.*", Pattern.DOTALL);

  /** Browsers drop these from addresses, so a scheme could hide behind them. */
  private static final Pattern DROPPED_BY_BROWSERS = Pattern.compile("[\\p{Cntrl}\\s]");

  @Override
  public String sanitizeLinkUrl(String url) {
    return mayLinkTo(url) ? url : "";
  }

  @Override
  public String sanitizeImageUrl(String url) {
    return mayShow(url) ? url : "";
  }

  static boolean mayLinkTo(String url) {
    Matcher scheme = SCHEME.matcher(asBrowsersReadIt(url));
    if (scheme.matches()) {
      return switch (scheme.group(1).toLowerCase(Locale.ROOT)) {
        case "http", "https", "mailto" -> true;
        default -> false;
      };
    }
    return isLocal(url);
  }

  static boolean mayShow(String url) {
    return !SCHEME.matcher(asBrowsersReadIt(url)).matches() && isLocal(url);
  }

  private static boolean isLocal(String url) {
    // Browsers take backslashes for slashes, and two slashes lead to another host.
    String read = asBrowsersReadIt(url).replace('\\', '/');
    return !read.isEmpty() && !read.startsWith("//");
  }

  private static String asBrowsersReadIt(String url) {
    return DROPPED_BY_BROWSERS.matcher(url).replaceAll("");
  }
}
