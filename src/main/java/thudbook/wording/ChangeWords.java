package thudbook.wording;

import java.util.Locale;

/** Acts in words. */
public final class ChangeWords {
  private ChangeWords() {}

  /** The words of an act with a capital at the start. */
  public static String heading(String what) {
    return what.isEmpty()
        ? "A change"
        : what.substring(0, 1).toUpperCase(Locale.ROOT) + what.substring(1);
  }
}
