package thudbook.web;

import io.javalin.http.Context;
import java.net.URI;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Refuses requests that were not meant for this server, or that a page of another site sent.
 *
 * <p>A page anywhere can make its reader's browser send requests to a loopback address. Its name
 * then stands in Host (after its own name was pointed at loopback) or in Origin, so both are
 * compared with our own. A form can be sent without Origin by old browsers: then no type that a
 * form can have is taken.
 */
final class Origins {
  private static final Pattern LOOPBACK =
      Pattern.compile("(localhost|127(\\.\\d{1,3}){3}|\\[::1])(:(\\d{1,5}))?");
  private static final Set<String> SAFE_METHODS = Set.of("GET", "HEAD");
  private static final Set<String> FORM_TYPES =
      Set.of("application/x-www-form-urlencoded", "multipart/form-data", "text/plain");

  private final @Nullable URI baseUrl;

  /**
   * @param baseUrl an address under which the server is also reached; null: loopback only
   */
  Origins(@Nullable URI baseUrl) {
    this.baseUrl = baseUrl;
  }

  /** Lets a request pass or throws. */
  void check(Context ctx) {
    String own = ownOrigin(ctx.req().getHeader("Host"), ctx.req().getLocalPort());
    if (own == null) {
      throw new HttpError(ErrorKind.FOREIGN_HOST);
    }
    if (SAFE_METHODS.contains(ctx.req().getMethod())) {
      return;
    }
    List<String> origins = Collections.list(ctx.req().getHeaders("Origin"));
    boolean accepted =
        origins.isEmpty() ? !isFormType(ctx.contentType()) : origins.equals(List.of(own));
    if (!accepted) {
      throw new HttpError(ErrorKind.FOREIGN_ORIGIN);
    }
  }

  /** The origin of a page that was served under this Host, or null if it is not ours. */
  private @Nullable String ownOrigin(@Nullable String host, int port) {
    if (host == null) {
      return null;
    }
    String lowercase = host.toLowerCase(Locale.ROOT);
    var matcher = LOOPBACK.matcher(lowercase);
    if (matcher.matches()) {
      String said = matcher.group(4);
      return (said == null ? 80 : Integer.parseInt(said)) == port ? "http://" + lowercase : null;
    }
    return baseUrl != null && lowercase.equals(authority(baseUrl))
        ? baseUrl.getScheme() + "://" + lowercase
        : null;
  }

  /** Host and port as browsers write them: without the port where it is the scheme's own. */
  private static String authority(URI url) {
    boolean usual = url.getPort() == (url.getScheme().equals("https") ? 443 : 80);
    return url.getHost().toLowerCase(Locale.ROOT)
        + (url.getPort() < 0 || usual ? "" : ":" + url.getPort());
  }

  private static boolean isFormType(@Nullable String contentType) {
    return contentType != null && FORM_TYPES.contains(MediaTypes.bare(contentType));
  }
}
