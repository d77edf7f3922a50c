package thudbook.web;

import java.util.Map;

/** What every answer tells the browser not to do. */
final class SecurityHeaders {
  static final Map<String, String> VALUES =
      Map.of(
          "Content-Security-Policy",
          "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
              + "object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'",
          "X-Content-Type-Options",
          "nosniff",
          "Referrer-Policy",
          "same-origin",
          "Cross-Origin-Opener-Policy",
          "same-origin",
          "Cross-Origin-Resource-Policy",
          "same-origin");

  private SecurityHeaders() {}
}
