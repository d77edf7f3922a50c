package thudbook.access;

/**
 * Who is there, and by which way; made where somebody comes in and handed down from there.
 *
 * @param author who answers for what is done
 */
public record Visitor(Author author, Way way) {
  /** How somebody came in. */
  public enum Way {
    /** A request, of a page or of a program. */
    WEB,

    COMMAND_LINE
  }

  /** The one person of a notebook without members. */
  public static Visitor alone(Way way) {
    return new Visitor(new Author("owner"), way);
  }
}
