package thudbook.pages;

/**
 * What went wrong, for a reader.
 *
 * @param status of the answer
 * @param title in a few words
 * @param message what can be done
 */
public record Problem(int status, String title, String message) {
  /** The problem that a status stands for. */
  static Problem of(int status, String message) {
    String title =
        switch (status) {
          case 404 -> "Nothing here";
          case 421 -> "Not at this address";
          default -> status >= 500 ? "Something broke here" : "That could not be done";
        };
    return new Problem(status, title, message);
  }
}
