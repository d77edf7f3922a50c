package thudbook.web;

import io.javalin.http.Context;
import java.util.List;
import java.util.Locale;
import org.eclipse.jetty.http.QuotedQualityCSV;

/** What a request brings and what it accepts. */
public final class MediaTypes {
  private MediaTypes() {}

  /**
   * Requires the body to be of a type.
   *
   * @throws HttpError 415 if it is of another type or says none
   */
  public static void requireBody(Context ctx, String type) {
    String said = ctx.contentType();
    if (said == null || !bare(said).equals(type)) {
      throw new HttpError(ErrorKind.UNSUPPORTED_TYPE);
    }
  }

  /**
   * Requires that the sender accepts a type; without an Accept header everything is accepted.
   *
   * @throws HttpError 406 if not
   */
  public static void requireAccepted(Context ctx, String type) {
    String said = ctx.header("Accept");
    if (said == null || said.isBlank()) {
      return;
    }
    String family = type.substring(0, type.indexOf('/')) + "/*";
    List<String> wanted = List.of(type, family, "*/*");
    if (preferred(said).stream().map(MediaTypes::bare).noneMatch(wanted::contains)) {
      throw new HttpError(ErrorKind.NOT_ACCEPTABLE);
    }
  }

  /** The values of a header with qualities, best first, without those of quality 0. */
  static List<String> preferred(String header) {
    QuotedQualityCSV values = new QuotedQualityCSV();
    values.addValue(header);
    return values.getValues();
  }

  /** A type without its parameters, in lower case. */
  static String bare(String type) {
    int end = type.indexOf(';');
    return (end < 0 ? type : type.substring(0, end)).trim().toLowerCase(Locale.ROOT);
  }
}
