package thudbook.access;

/**
 * Who made a change, as it is shown in histories.
 *
 * @param name 1 to 80 characters
 */
public record Author(String name) {
  /** The hand that loads the sample library. */
  public static final Author SAMPLES = new Author("sample library");

  public Author {
    if (name.isBlank() || name.length() > 80) {
      throw new IllegalArgumentException(
          "a name of 1 to 80 characters was expected, found " + name);
    }
  }
}
