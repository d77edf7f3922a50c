package thudbook.documents.tree;

import java.time.DateTimeException;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Days, as ISO 8601 writes them. */
public final class Dates {
  public static final String EXPECTED = "a date such as 2026-10-02";

  private Dates() {}

  public static @Nullable LocalDate read(Tree tree, Faults faults) {
    String text = tree instanceof Tree.Text written ? written.text().strip() : "";
    if (text.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}")) {
      try {
        return LocalDate.parse(text);
      } catch (DateTimeException noSuchDay) {
        faults.add(tree, "no-such-day", EXPECTED);
        return null;
      }
    }
    faults.add(tree, "not-a-date", EXPECTED);
    return null;
  }
}
