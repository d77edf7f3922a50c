package thudbook.pages.help;

import java.util.Arrays;
import java.util.List;
import thudbook.web.ErrorKind;

/**
 * What to do about an error. Its page is where the {@code type} of the answer leads.
 *
 * @param text what a person can do
 */
public record Remedy(ErrorKind kind, String text) {
  /** The remedies of all kinds of error, by status. */
  public static List<Remedy> all() {
    return Arrays.stream(ErrorKind.values()).map(Remedy::of).toList();
  }

  /** What to do about a kind of error. */
  static Remedy of(ErrorKind kind) {
    return new Remedy(
        kind,
        switch (kind) {
          case MALFORMED ->
              "The answer tells the place where reading stopped. Mend it there and send it again.";
          case FOREIGN_ORIGIN ->
              "Use the pages of the notebook itself, or send JSON from a program that names no"
                  + " Origin.";
          case NOT_FOUND -> "Look it up in the list of recipes or of gates.";
          case METHOD_NOT_ALLOWED -> "The Allow header names the methods that the address takes.";
          case NOT_ACCEPTABLE ->
              "Leave the Accept header out, or name the form that the help names.";
          case TIMEOUT -> "Send it again.";
          case CONFLICT -> "Look at what is there, or choose another name.";
          case STALE ->
              "Read it again, compare, and send your change together with the new version.";
          case PRECONDITION_REQUIRED -> "Read it first, and send its ETag along as If-Match.";
          case TOO_LARGE -> "A document may have 256\u00a0KiB, its notes 64\u00a0KiB.";
          case UNSUPPORTED_TYPE ->
              "Send application/json, or text/markdown where a document is taken.";
          case FOREIGN_HOST ->
              "Use the address that was printed at the start. Behind a proxy, set base-url to the"
                  + " address that people use.";
          case REFUSED_VALUES ->
              "Every fault is listed under errors: its place as a JSON pointer, what was found, and"
                  + " what was expected.";
          case NOT_STORED ->
              "Make room on the disk that holds the data folder, or let the notebook write there,"
                  + " and send it again. What was there before is as it was.";
          case INTERNAL ->
              "Nothing was changed. The log of the server tells more under the id of the request.";
        });
  }
}
