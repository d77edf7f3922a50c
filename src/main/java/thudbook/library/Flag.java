package thudbook.library;

/** What holds of a recipe or does not. */
public enum Flag {
  /** The asking member's favourite. */
  FAVOURITE("favourite"),
  /** Has photos. */
  PHOTOS("photos"),
  /** Something is missing, so that nothing can be predicted. */
  INCOMPLETE("incomplete");

  private final String key;

  Flag(String key) {
    this.key = key;
  }

  /** The name in addresses. */
  public String key() {
    return key;
  }
}
