package thudbook.pages;

import java.util.List;
import java.util.Optional;

/**
 * What a kind of refusal of the JSON interface means. Its address is the {@code type} of the answer
 * and stays the same for ever.
 *
 * @param slug its name below {@code /help/errors}
 * @param status the HTTP status that it comes with
 * @param meaning what happened
 * @param remedy what to do about it
 */
public record ProblemHelp(String slug, int status, String title, String meaning, String remedy) {
  /** All kinds, by status. */
  public static final List<ProblemHelp> ALL =
      List.of(
          new ProblemHelp(
              "malformed",
              400,
              "Could not be read",
              "The request is not what its type says: not JSON, not UTF-8, or cut short.",
              "The answer tells the place where reading stopped. Mend it there and send it again."),
          new ProblemHelp(
              "foreign-origin",
              403,
              "From another site",
              "A page of another site tried to change something here, or the request does not say"
                  + " where it comes from and looks like a form.",
              "Use the pages of the notebook itself, or send JSON from a program without an Origin"
                  + " header."),
          new ProblemHelp(
              "not-found",
              404,
              "No such thing",
              "There is no recipe, gate or address of this name.",
              "Look it up in the list of recipes or gates; names in addresses are shown there."),
          new ProblemHelp(
              "method-not-allowed",
              405,
              "Not done this way",
              "The address exists, but does not take requests of this method.",
              "The Allow header names the methods that it takes."),
          new ProblemHelp(
              "conflict",
              409,
              "Conflicts with what is there",
              "Something with this name or id is already there, or still used.",
              "Choose another name, or look at what is there first."),
          new ProblemHelp(
              "stale",
              412,
              "A newer version is there",
              "Somebody saved after you read.",
              "Read it again, compare, and send your change with the new version."),
          new ProblemHelp(
              "too-large",
              413,
              "Too large",
              "The body is larger than is allowed.",
              "Documents may have 256 KiB, their notes 64 KiB."),
          new ProblemHelp(
              "unsupported-type",
              415,
              "Not in this notation",
              "The body is of a type that this address does not read.",
              "Send application/json, or text/markdown for documents."),
          new ProblemHelp(
              "foreign-host",
              421,
              "Not at this address",
              "The request was sent to a host name that this notebook does not answer to.",
              "Use the address that was printed at the start, or set base-url."),
          new ProblemHelp(
              "refused-values",
              422,
              "Values are refused",
              "It was read, and some values are missing, unknown or out of range.",
              "Every fault is listed under errors, with its place as a JSON pointer, what was found"
                  + " and what was expected."),
          new ProblemHelp(
              "internal",
              500,
              "Something broke here",
              "A fault of the program, not of the request.",
              "Nothing was changed. The log has the details under the request id of the answer."));

  /** The kind of a slug, if there is one. */
  static Optional<ProblemHelp> find(String slug) {
    return ALL.stream().filter(help -> help.slug().equals(slug)).findFirst();
  }

  /** Where its page is. */
  public String address() {
    return "/help/errors/" + slug;
  }
}
