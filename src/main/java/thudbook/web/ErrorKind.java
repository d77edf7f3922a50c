package thudbook.web;

import java.util.Arrays;
import java.util.Optional;
import thudbook.quantities.Refusal;

/**
 * The errors that a request can meet, each with one HTTP status, one stable address under {@code
 * /help/errors/} and one sentence for people. The sentences never quote the request.
 */
public enum ErrorKind {
  MALFORMED(400, "malformed", "Could not be read", "The request could not be read."),
  FOREIGN_ORIGIN(
      403,
      "foreign-origin",
      "Refused from elsewhere",
      "A page of another site, or a form without an origin, may change nothing here."),
  NOT_FOUND(404, "not-found", "Not found", "There is nothing at this address."),
  METHOD_NOT_ALLOWED(
      405, "method-not-allowed", "Not possible here", "This address does not take that method."),
  NOT_ACCEPTABLE(
      406, "not-acceptable", "Not available in that form", "None of the accepted forms exists."),
  TIMEOUT(408, "timeout", "Took too long", "The request did not arrive in time."),
  CONFLICT(409, "conflict", "In conflict", "This conflicts with what is already there."),
  STALE(412, "stale", "Changed meanwhile", "A newer version is there."),
  TOO_LARGE(413, "too-large", "Too large", "The request is larger than allowed."),
  UNSUPPORTED_TYPE(
      415, "unsupported-type", "Wrong type", "This address does not take that content type."),
  FOREIGN_HOST(
      421,
      "foreign-host",
      "Wrong host",
      "This notebook answers only under its own address; see the setting base-url."),
  REFUSED_VALUES(422, "refused-values", "Values refused", "Some values can't be taken."),
  PRECONDITION_REQUIRED(
      428,
      "precondition-required",
      "Which version?",
      "A change must name the version that it is meant for, in If-Match."),
  NOT_STORED(
      507,
      "not-stored",
      "Not stored",
      "The disk is full, or the data folder may not be written to. Nothing was changed."),
  INTERNAL(
      500,
      "internal-error",
      "Internal error",
      "Something went wrong here. Nothing you sent is at fault; the log has more.");

  private final int status;
  private final String slug;
  private final String title;
  private final String meaning;

  ErrorKind(int status, String slug, String title, String meaning) {
    this.status = status;
    this.slug = slug;
    this.title = title;
    this.meaning = meaning;
  }

  /** The HTTP status. */
  public int status() {
    return status;
  }

  /** The last part of its address. */
  public String slug() {
    return slug;
  }

  /** A few words, as a heading. */
  public String title() {
    return title;
  }

  /** One sentence. */
  public String meaning() {
    return meaning;
  }

  /** The stable address that names this kind, its {@code type} in RFC 9457. */
  public String type() {
    return "/help/errors/" + slug;
  }

  /** The kind that a slug names. */
  public static Optional<ErrorKind> ofSlug(String slug) {
    return Arrays.stream(values()).filter(kind -> kind.slug.equals(slug)).findFirst();
  }

  /** The kind for a refusal. */
  public static ErrorKind of(Refusal.Kind kind) {
    return switch (kind) {
      case MALFORMED -> MALFORMED;
      case REFUSED_VALUES -> REFUSED_VALUES;
      case NOT_FOUND -> NOT_FOUND;
      case CONFLICT -> CONFLICT;
      case STALE -> STALE;
      case TOO_LARGE -> TOO_LARGE;
      case NOT_STORED -> NOT_STORED;
    };
  }

  /** The kind for a status that the HTTP library chose: the nearest that we have a name for. */
  static ErrorKind ofStatus(int status) {
    return Arrays.stream(values())
        .filter(kind -> kind.status == status)
        .findFirst()
        .orElse(status >= 400 && status < 500 ? MALFORMED : INTERNAL);
  }
}
